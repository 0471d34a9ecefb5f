import { alikeAmong, witnesses } from '../evidence/alikeLooks.ts';
import { bestDraw } from '../evidence/figures.ts';
import type { Look, ModelPart, PreparedCase } from '../evidence/preparedCase.ts';
import { sum } from '../ground/statistics.ts';
import { askedOf } from '../knowledge/askedOf.ts';
import { needOn } from '../knowledge/needOn.ts';
import type { Sign } from '../knowledge/schema.ts';
import { findingKey } from '../piece/finding.ts';
import { readingIds } from '../piece/readings.ts';
import { evaluate } from '../summation/evaluate.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { type PartJoints, partJoints, posteriorWithLook } from '../summation/partJoints.ts';
import { posteriorAfter } from '../summation/posteriorAfter.ts';
import type { Posterior } from '../summation/readingPosterior.ts';
import type { Weighing } from './weighing.ts';

/**
 * For every sign not yet looked for: by how many bits looking is expected to lower the doubt over the readings.
 * Most telling for the time it takes first.
 *
 * @param answered  keys of signs already answered, in whatever way
 * @source the mutual information of the reading and the finding, Shannon 1948
 */
export function nextLooks(prepared: PreparedCase, answered: ReadonlySet<string>): Weighing['nextLooks'] {
  // Every shop has its say here: a habit not yet looked for may be what proves one.
  const evaluation = evaluate(fixModel(layOut(prepared, true), bestDraw()));
  const habitsSeen = new Set(
    prepared.looks.filter((look) => look.sign.hangsOn === 'making').map((look) => look.sign.id),
  );
  const now = entropy(readingIds.map((id) => evaluation.posterior.readings[id]));
  // What a sign tells of an alteration is the same wherever it is seen.
  const told = new Map<string, number>();
  const ofForm = signsOfForm(prepared);
  const shown = new Map<string, Float64Array>();
  const looks = prepared.parts.flatMap((part) => {
    const open = ofForm.filter(
      // A maker keeps to his way: seen on one part, the others tell little more.
      (sign) =>
        askedOf(sign, part, prepared.form, prepared.known) &&
        !habitsSeen.has(sign.id) &&
        !answered.has(findingKey(sign.id, part.id === 'whole' ? undefined : part.id)),
    );
    if (open.length === 0) return [];
    const joints = partJoints(evaluation, part, shown);
    return open.map((sign) => {
      const look = lookAt(sign, part, prepared.photoOnly);
      const caution = sign.caution === undefined ? {} : { caution: sign.caution };
      const bits = Math.max(0, now - doubtAfter(evaluation, joints, look, told)) * newWitness(prepared, look);
      return {
        sign: sign.id,
        part: part.id === 'whole' ? null : part.id,
        bits,
        minutes: sign.minutes,
        needs: needOn(sign.needs, part.kind, prepared.form),
        ...caution,
      };
    });
  });
  return oncePerHabit(looks, prepared).sort(
    (a, b) => b.bits / b.minutes - a.bits / a.minutes || (a.sign < b.sign ? -1 : 1),
  );
}

/** Of a sign that several parts would show alike (a habit, an alteration), only the part that tells most is proposed. */
function oncePerHabit(looks: Weighing['nextLooks'], prepared: PreparedCase): Weighing['nextLooks'] {
  const alikeAnywhere = ({ sign }: Weighing['nextLooks'][number]) => {
    const cause = prepared.knowledge.signs[sign]?.hangsOn ?? '';
    return cause === 'making' || cause.startsWith('alteration/');
  };
  const best = new Map<string, Weighing['nextLooks'][number]>();
  for (const look of looks) {
    const known = best.get(look.sign);
    if (known === undefined || look.bits > known.bits) best.set(look.sign, look);
  }
  return looks.filter((look) => !alikeAnywhere(look) || best.get(look.sign) === look);
}

/** The signs that can be looked for on a piece of this form, on whatever part. */
function signsOfForm({ knowledge, form, alterations, photoOnly }: PreparedCase): Sign[] {
  const causes = new Set(alterations.map((each) => `alteration/${each.id}`));
  return Object.values(knowledge.signs).filter(
    (sign) =>
      sign.on.some((kind) => askedOf(sign, kind, form)) &&
      (!sign.hangsOn.startsWith('alteration/') || causes.has(sign.hangsOn)) &&
      !(photoOnly && sign.inPhoto === 'no'),
  );
}

function lookAt(sign: Sign, part: ModelPart, photoOnly: boolean): Look {
  return {
    key: findingKey(sign.id, part.id),
    sign,
    part: part.id,
    state: 'present',
    sure: photoOnly ? 'hint' : 'plain',
  };
}

/** How much of a witness a further look is, where the same was found on other parts already; 1 where it was not. */
function newWitness({ looks, knowledge }: PreparedCase, look: Look): number {
  const alike = alikeAmong(look, looks);
  if (alike === 1) return 1;
  const shared = bestDraw()(knowledge.making.alikeTogether);
  return witnesses(alike, shared) - witnesses(alike - 1, shared);
}

function doubtAfter(
  evaluation: Evaluation,
  joints: PartJoints,
  look: Look,
  told: Map<string, number>,
): number {
  const posterior = () =>
    posteriorWithLook(joints, look) ?? posteriorAfter(evaluation, look, [...evaluation.looks, look]);
  if (!look.sign.hangsOn.startsWith('alteration/')) return expectedEntropy(evaluation, posterior());
  const doubt = told.get(look.sign.id) ?? expectedEntropy(evaluation, posterior());
  told.set(look.sign.id, doubt);
  return doubt;
}

/** Doubt left over the readings, on average, after a look: seen or not, each as probable as now believed. */
function expectedEntropy(evaluation: Evaluation, seen: Posterior): number {
  const scale = Math.exp(seen.log - evaluation.posterior.log);
  const present = readingIds.map((id) =>
    Math.min(seen.readings[id] * scale, evaluation.posterior.readings[id]),
  );
  const absent = readingIds.map((id, i) =>
    Math.max(0, evaluation.posterior.readings[id] - (present[i] ?? 0)),
  );
  const seenTotal = sum(present);
  const unseenTotal = sum(absent);
  const total = seenTotal + unseenTotal;
  return total > 0 ? (seenTotal * entropy(present) + unseenTotal * entropy(absent)) / total : 0;
}

/** Entropy in bits of posterior on any scale. */
function entropy(posterior: readonly number[]): number {
  const total = sum(posterior);
  return total > 0
    ? posterior.reduce((bits, mass) => (mass > 0 ? bits - (mass / total) * Math.log2(mass / total) : bits), 0)
    : 0;
}
