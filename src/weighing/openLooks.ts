import { alikeAmong, witnesses } from '../evidence/alikeLooks.ts';
import { bestDraw } from '../evidence/figures.ts';
import type { Look, ModelPart, PreparedCase } from '../evidence/preparedCase.ts';
import { askedOf } from '../knowledge/askedOf.ts';
import { needOn } from '../knowledge/needOn.ts';
import type { Sign } from '../knowledge/schema.ts';
import { findingKey } from '../piece/finding.ts';
import type { NextLook } from './lookPlan.ts';

/**
 * The signs not yet looked for, part by part; a part where nothing is left to look for is left out.
 *
 * @param answered  keys of signs already answered, in whatever way
 */
export function openLooks(
  prepared: PreparedCase,
  answered: ReadonlySet<string>,
): { part: ModelPart; looks: Look[] }[] {
  const habitsSeen = new Set(
    prepared.looks.filter((look) => look.sign.hangsOn === 'making').map((look) => look.sign.id),
  );
  const ofForm = signsOfForm(prepared);
  return prepared.parts.flatMap((part) => {
    const open = ofForm.filter(
      // A maker keeps to his way: seen on one part, the others tell little more.
      (sign) =>
        askedOf(sign, part, prepared.form, prepared.known) &&
        !habitsSeen.has(sign.id) &&
        !answered.has(findingKey(sign.id, part.id === 'whole' ? undefined : part.id)),
    );
    const looks = open.map((sign) => lookAt(sign, part, prepared.photoOnly));
    return looks.length === 0 ? [] : [{ part, looks }];
  });
}

/** A look as it is proposed: what it is expected to tell, what it takes, what it needs and what to mind. */
export function proposed(
  { sign, part }: Look,
  { kind }: ModelPart,
  prepared: PreparedCase,
  bits: number,
): NextLook {
  return {
    sign: sign.id,
    part: part === 'whole' ? null : part,
    bits,
    minutes: sign.minutes,
    needs: needOn(sign.needs, kind, prepared.form),
    ...(sign.caution === undefined ? {} : { caution: sign.caution }),
  };
}

/** Most telling for the time it takes first; of a sign that several parts would show alike only the part that tells most. */
export function inOrder<Looked extends NextLook>(looks: readonly Looked[], prepared: PreparedCase): Looked[] {
  return oncePerHabit(looks, prepared).sort(
    (a, b) => b.bits / b.minutes - a.bits / a.minutes || (a.sign < b.sign ? -1 : 1),
  );
}

/** Of a sign that several parts would show alike (a habit, an alteration), only the part that tells most is proposed. */
function oncePerHabit<Looked extends NextLook>(looks: readonly Looked[], prepared: PreparedCase): Looked[] {
  const alikeAnywhere = ({ sign }: NextLook) => {
    const cause = prepared.knowledge.signs[sign]?.hangsOn ?? '';
    return cause === 'making' || cause.startsWith('alteration/');
  };
  const best = new Map<string, Looked>();
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
export function newWitness({ looks, knowledge }: PreparedCase, look: Look): number {
  const alike = alikeAmong(look, looks);
  if (alike === 1) return 1;
  const shared = bestDraw()(knowledge.making.alikeTogether);
  return witnesses(alike, shared) - witnesses(alike - 1, shared);
}
