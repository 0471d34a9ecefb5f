import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { bestDraw } from '../evidence/figures.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import type { Look, PreparedCase } from '../evidence/preparedCase.ts';
import { type Fault, refuse } from '../ground/fault.ts';
import type { Knowledge, Sign } from '../knowledge/schema.ts';
import { findingKey } from '../piece/finding.ts';
import { alterationShare } from '../summation/alterationShare.ts';
import { evaluate } from '../summation/evaluate.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { partJoints } from '../summation/partJoints.ts';
import { posteriorSeen } from '../summation/posteriorSeen.ts';
import { isTelling, type NextLook, withinLimits } from './lookPlan.ts';
import { inOrder, newWitness, openLooks, proposed } from './openLooks.ts';
import { shown } from './shown.ts';

/** What would settle whether one alteration happened. */
export type Suspicion = {
  alteration: string;
  name: string;
  /** How probable it is now, 0–1. */
  probability: number;
  /** At most a dozen, the most telling for the time it takes first; bits are of doubt over this alteration alone. */
  looks: SuspicionLook[];
};

/** A look, with how probable the alteration is if the sign is found there, and if it was looked for and not found. */
export type SuspicionLook = NextLook & { ifFound: number; ifNot: number };

const most = 12;

/**
 * What to look at to settle whether one alteration happened, and what each answer would make of it.
 *
 * Method: exact. The case is summed as it stands and with the alteration held to have happened; how probable a sign is in
 * both gives what looking is expected to tell of it. For the looks that are told, the case is weighed anew with each answer.
 *
 * @param id  of an alteration that the form and its parts allow
 * @returns the suspicion, or the faults that leave nothing to weigh
 * @source mutual information, Shannon 1948
 */
export function suspicion(
  input: CaseToWeigh,
  id: string,
  knowledge: Knowledge,
  yearNow: number,
): { ok: true; output: Suspicion } | { ok: false; faults: Fault[] } {
  const ready = prepareCase(input, knowledge, yearNow);
  if (!ready.ok) return ready;
  const { prepared } = ready;
  const alteration = prepared.alterations.find((each) => each.id === id);
  if (alteration === undefined)
    return refuse(
      'suspicion.not-here',
      `"${id}" is no alteration that a ${prepared.form.name} with these parts can have had.`,
    );
  const answered = new Set(input.findings.map((each) => findingKey(each.sign, each.part)));
  const telling = withinLimits(tellingLooks(prepared, id, answered), input.limits).filter(isTelling);
  const shareWith = (look: NextLook, state: 'present' | 'absent') => {
    const finding = { sign: look.sign, ...(look.part === null ? {} : { part: look.part }), state };
    const sure = prepared.photoOnly ? ('hint' as const) : ('plain' as const);
    const more = prepareCase(
      { ...input, findings: [...input.findings, { ...finding, sure }] },
      knowledge,
      yearNow,
    );
    return more.ok ? shareOf(more.prepared, id) : Number.NaN;
  };
  return {
    ok: true,
    output: {
      alteration: id,
      name: alteration.name,
      probability: shown(shareOf(prepared, id)),
      looks: telling.slice(0, most).map((look) => ({
        ...look,
        ifFound: shown(shareWith(look, 'present')),
        ifNot: shown(shareWith(look, 'absent')),
      })),
    },
  };
}

function shareOf(prepared: PreparedCase, id: string): number {
  const alteration = prepared.alterations.find((each) => each.id === id);
  return alteration === undefined
    ? 0
    : alterationShare(evaluate(fixModel(layOut(prepared), bestDraw())), alteration);
}

function tellingLooks(prepared: PreparedCase, id: string, answered: ReadonlySet<string>): NextLook[] {
  const layout = layOut(prepared, true);
  const asItStands = evaluate(fixModel(layout, bestDraw()));
  const withHeld = [...prepared.looks, heldToHaveHappened(id, prepared)];
  const held = evaluate(fixModel(layout, bestDraw(), withHeld), withHeld);
  const share = massBeside(asItStands, held.posterior);
  const [shownNow, shownHeld] = [new Map<string, Float64Array>(), new Map<string, Float64Array>()];
  const looks = openLooks(prepared, answered).flatMap(({ part, looks: open }) => {
    const now = partJoints(asItStands, part, shownNow);
    const then = partJoints(held, part, shownHeld);
    return open.map((look) => {
      const seen = massBeside(asItStands, posteriorSeen(asItStands, now, look));
      const both = massBeside(asItStands, posteriorSeen(held, then, look));
      const bits = toldOf(share, seen, both) * newWitness(prepared, look);
      return proposed(look, part, prepared, bits);
    });
  });
  return inOrder(looks, prepared);
}

/** A posterior's mass as a share of all that the findings leave. */
function massBeside({ posterior }: Evaluation, of: Evaluation['posterior']): number {
  return (of.total / posterior.total) * Math.exp(of.log - posterior.log);
}

/** What a look tells in bits of something so probable, where the sign is seen with that share, and together with it. */
function toldOf(share: number, seen: number, both: number): number {
  const unseen = 1 - seen;
  const after =
    (seen > 0 ? seen * doubt(both / seen) : 0) + (unseen > 0 ? unseen * doubt((share - both) / unseen) : 0);
  return Math.max(0, doubt(share) - after);
}

/** The doubt in bits over something so probable. */
function doubt(probability: number): number {
  const of = (p: number) => (p <= 0 || p >= 1 ? 0 : -p * Math.log2(p));
  return of(probability) + of(1 - probability);
}

/** A look that is seen where the alteration happened, and nowhere else: no sign of the knowledge, only a way to hold it. */
function heldToHaveHappened(id: string, { knowledge }: PreparedCase): Look {
  const [any] = Object.values(knowledge.signs);
  if (any === undefined) throw new RangeError('the knowledge has no signs');
  const { group: _, campaign: __, ...plain } = any;
  const sign: Sign = {
    ...plain,
    id: `held/${id}`,
    hangsOn: `alteration/${id}`,
    shows: { happened: { in100: '100, 100–100' }, not: { in100: '0, 0–0' } },
  };
  return {
    key: sign.id,
    sign,
    part: 'whole',
    state: 'present',
    sure: 'plain',
    measured: { ifThere: 1, ifNot: 0 },
  };
}
