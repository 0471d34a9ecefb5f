import type { Calculation, Fault } from '../../calculations/define.ts';
import type { Form, FormPart, Knowledge } from '../../knowledge/schema.ts';
import type { BenchResult } from '../../piece/benchResult.ts';
import type { Json } from '../../piece/event.ts';
import { findingKey, type MeasuredBy } from '../../piece/finding.ts';
import type { Piece } from '../../piece/piece.ts';
import type { Act } from '../examination/answerSign.ts';

/** What every tool of the bench leans on. */
export type BenchRoom = {
  piece: Piece;
  readOnly: boolean;
  knowledge: Knowledge;
  form: Form;
  parts: FormPart[];
  record: (act: Act) => void;
};

/** Of which sign a measurement speaks, and how probable it makes each state. */
export type SpeaksOf = {
  /** Signs it may be entered as, the fitting one first; those that this piece cannot show are left out. */
  signs: readonly string[];
  /** Under `present` and `absent`, or under the states of the unknown that the signs hang on. */
  likelihoods: Readonly<Record<string, number>>;
};

/** What a tool has found: the calculation as it was done, and what it says. */
export type Found = {
  calculation: Pick<Calculation, 'id' | 'method' | 'source'>;
  input: unknown;
  output: unknown;
  /** The result in a sentence, with its doubt. */
  says: string;
  /** Left out where the result is a measure only, or can't tell. */
  speaksOf?: SpeaksOf;
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
export function enterFinding(sign: string, part: string | undefined, found: Found, piece: Piece): Act {
  const id = findingKey(sign, part);
  const measured: MeasuredBy = {
    calculation: found.calculation.id,
    input: asJson(found.input),
    output: asJson(found.output),
    likelihoods: { ...found.speaksOf?.likelihoods },
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
    state: seems(found) ? 'present' : 'absent',
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

function seems(found: Found): boolean {
  const { present, absent } = found.speaksOf?.likelihoods ?? {};
  return present === undefined || absent === undefined || present >= absent;
}

/** Where a result can be entered: every part of the piece that can show one of its signs, with the sign. */
export function placesFor(
  room: Pick<BenchRoom, 'knowledge' | 'parts'>,
  speaksOf: SpeaksOf,
): { sign: string; part: string | undefined }[] {
  return speaksOf.signs.flatMap((id) => {
    const sign = room.knowledge.signs[id];
    if (sign === undefined) return [];
    const parts = room.parts.filter((part) => sign.on.includes(part.kind)).map((part) => part.id);
    return [
      ...(sign.on.includes('whole') ? [{ sign: id, part: undefined }] : []),
      ...parts.map((part) => ({ sign: id, part })),
    ];
  });
}

/** The first fault in words, for a line beside the tool. */
export function faultWords(faults: readonly Fault[]): string {
  return faults.map((fault) => fault.message).join(' ');
}
