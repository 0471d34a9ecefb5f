import type { Calculation } from '../../calculations/define.ts';
import { findingsMeasured } from '../../calculations/findingsMeasured.ts';
import type { AskedOf, OutputOf } from '../../calculations/runCalculation.ts';
import type { Fault } from '../../ground/fault.ts';
import type { Form, FormPart, Knowledge } from '../../knowledge/schema.ts';
import type { BenchResult } from '../../piece/benchResult.ts';
import type { Json } from '../../piece/event.ts';
import { findingKey, type MeasuredBy } from '../../piece/finding.ts';
import type { Piece } from '../../piece/piece.ts';
import type { Act } from '../examination/answerSign.ts';
import { runHere } from './runHere.ts';

/** What every tool of the bench leans on. */
export type BenchContext = {
  piece: Piece;
  readOnly: boolean;
  knowledge: Knowledge;
  form: Form;
  parts: FormPart[];
  record: (act: Act) => void;
};

/** The signs a measurement speaks of, with their likelihoods, and where they can be entered. */
export type Findings = OutputOf<typeof findingsMeasured>;

/** What a measurement says of the signs this piece can show; undefined where it tells of none. */
export function findingsOf(
  { form, piece, knowledge }: Pick<BenchContext, 'form' | 'piece' | 'knowledge'>,
  measured: AskedOf<typeof findingsMeasured>['measured'],
): Findings | undefined {
  const asked = { measured, form: form.id, features: piece.features };
  const result = runHere(findingsMeasured, asked, knowledge);
  return result.ok && result.output.findings.length > 0 ? result.output : undefined;
}

/** What a tool has found: the calculation as it was done, and what it says. */
export type Found = {
  calculation: Pick<Calculation, 'id' | 'method' | 'source'>;
  input: unknown;
  output: unknown;
  /** The result in a sentence, with its doubt. */
  says: string;
  /** Left out where the result is a measure only, or can't tell. */
  findings?: Findings | undefined;
  photo?: string;
  marks?: unknown;
};

/** Keeps a result at the bench. */
export function keepResult(id: string, title: string, found: Found, part?: string): Act {
  const { calculation, input, output, says, photo, marks } = found;
  const result: BenchResult = {
    id,
    calculation: calculation.id,
    title,
    input: asJson(input),
    output: asJson(output),
    says,
    ...(part === undefined ? {} : { part }),
    ...(photo === undefined ? {} : { photo }),
    ...(marks === undefined ? {} : { marks: asJson(marks) }),
  };
  return { kind: 'bench-recorded', changes: [{ path: ['bench', id], to: result as Json }] };
}

/** Enters a result as a finding, weighed by what was measured in place of how sure the examiner is. */
export function enterFinding(
  { sign, state, likelihoods }: Findings['findings'][number],
  part: string | undefined,
  found: Found,
  piece: Piece,
): Act {
  const id = findingKey(sign, part);
  const measured: MeasuredBy = {
    calculation: found.calculation.id,
    input: asJson(found.input),
    output: asJson(found.output),
    likelihoods,
    says: found.says,
  };
  const before = piece.findings[id];
  const photos = [
    ...new Set([...(before?.photos ?? []), ...(found.photo === undefined ? [] : [found.photo])]),
  ];
  const finding = {
    id,
    sign,
    ...(part === undefined ? {} : { part }),
    state,
    sure: 'plain',
    inPhotoOnly: piece.mode === 'photo-only',
    words: before?.words || found.says,
    photos,
    measured,
  };
  return { kind: 'finding-recorded', changes: [{ path: ['findings', id], to: finding as Json }] };
}

/** As it is kept: what was left out stays out. */
function asJson(value: unknown): Json {
  return JSON.parse(JSON.stringify(value));
}

/** The first fault in words, for a line beside the tool. */
export function faultWords(faults: readonly Fault[]): string {
  return faults.map((fault) => fault.message).join(' ');
}
