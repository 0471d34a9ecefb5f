import { campaignOf } from '../evidence/campaigns.ts';
import type { Draw } from '../evidence/figures.ts';
import type { Look, PreparedCase } from '../evidence/preparedCase.ts';
import { inGroups, reportOf, shareIn } from '../evidence/signShares.ts';
import type { Alteration, Shop, Sign } from '../knowledge/schema.ts';
import type { ReadingId } from '../piece/readings.ts';
import { posteriorAtPart } from '../summation/atPart.ts';
import { evaluate } from '../summation/evaluate.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { posteriorIf } from '../summation/posteriorAfter.ts';
import type { Posterior } from '../summation/readingPosterior.ts';

/**
 * What one look tells of one figure of its sign, given all findings and the verdict: how probable it is that the figure had the
 * say (`of`: the part was in that state), and that it had and the sign was there (`seen`).
 */
export type Trial = { look: Look; state: string; seen: number; of: number };

/**
 * How far each figure of the signs that were looked for was put to the test by a case whose answer is known: for every look and
 * every state of what its sign hangs on, by the exact sums of the model.
 *
 * Whether a part was in a state is asked by a further look that only such a part can show; where the figure is one of several
 * that are mixed (a year of slow rise, a habit that a copy takes over in part), by that look in the place of the look itself. A
 * look that was measured by the states of its cause bears on no figure of its sign.
 *
 * @param verdict  the readings that the answer leaves
 * @returns none where the findings leave the verdict nothing
 * @source expected counts of the EM algorithm for hidden causes: Lauritzen (1995), from memory
 */
export function trials(prepared: PreparedCase, verdict: readonly ReadingId[], draw: Draw): Trial[] {
  const asked = { ...prepared, shops: prepared.shops.map(withTwins) };
  const evaluation = evaluate(fixModel(layOut(asked), draw));
  const mass = massGiven(evaluation, verdict);
  const whole = mass(evaluation.posterior);
  if (!(whole > 0)) return [];
  return asked.looks
    .filter((look) => look.byState === undefined)
    .flatMap((look) =>
      trialsOf(evaluation, look, (posterior) => mass(posterior) / whole).filter(({ of }) => of > 1e-9),
    );
}

/** The probability of all findings and the verdict, on the scale of the evaluation. */
function massGiven(evaluation: Evaluation, verdict: readonly ReadingId[]) {
  const { log } = evaluation.posterior;
  return (posterior: Posterior) =>
    verdict.reduce((sum, id) => sum + posterior.readings[id], 0) * Math.exp(posterior.log - log);
}

type Share = (posterior: Posterior) => number;

function trialsOf(evaluation: Evaluation, look: Look, share: Share): Trial[] {
  const { hangsOn } = look.sign;
  if (hangsOn.startsWith('alteration/')) return trialsOfAlteration(evaluation, look, share);
  const isMixed = hangsOn === 'year' || hangsOn === 'part-year' || isLoneHabit(evaluation, look);
  return isMixed ? trialsMixed(evaluation, look, share) : trialsOfCause(evaluation, look, share);
}

/** A sign of an alteration: it happened to the piece or did not. */
function trialsOfAlteration(evaluation: Evaluation, look: Look, share: Share): Trial[] {
  const { prepared } = evaluation.model.layout;
  const alteration = prepared.alterations.find(
    ({ id }) => `alteration/${id}` === look.sign.hangsOn,
  ) as Alteration;
  const counts = countsOf(evaluation, look, (other) => other.sign.hangsOn === look.sign.hangsOn);
  return (['happened', 'not'] as const).map((state) => {
    const given = (looks: readonly Look[]) =>
      share(posteriorIf(evaluation, alteration, state === 'happened', looks));
    const of = given(evaluation.looks);
    const seen = given(onlyIfThere(evaluation, look));
    return { look, state, of, seen: of > 0 ? of * (seen / of) ** (1 / counts) : 0 };
  });
}

/** A sign of a state that the part is in: origin, tooling, aging, use, or a maker's way that is shared by several parts. */
function trialsOfCause(evaluation: Evaluation, look: Look, share: Share): Trial[] {
  const at = (looks: readonly Look[]) => share(posteriorAtPart(evaluation, look.part, looks));
  const counts = countsOf(
    evaluation,
    look,
    (other) => other.part === look.part && other.sign.hangsOn === look.sign.hangsOn,
  );
  const there = onlyIfThere(evaluation, look);
  return Object.keys(look.sign.shows).map((state) => {
    const inState = indicator(look, state);
    const all = (looks: readonly Look[]) => at([...looks, inState]);
    const of = all(evaluation.looks);
    if (!(of > 1e-12)) return { look, state, of: 0, seen: 0 };
    const thereAtAll = all(there);
    const kind = campaignOf(look);
    if (kind === undefined) return { look, state, of, seen: of * (thereAtAll / of) ** (1 / counts) };
    // A trace that a campaign left tells of the campaign: of what the part shows of itself only its share of that.
    const been = campaignIndicator(look, kind);
    const after = all([...evaluation.looks, been]);
    const { draw } = evaluation.model;
    const own = shareIn(look.sign, state, draw);
    const shown = own + (1 - own) * draw((look.sign.campaign as NonNullable<Sign['campaign']>).shows);
    const thereAfter = all([...there, been]);
    const before = of - after;
    const seenBefore = before > 1e-12 ? before * ((thereAtAll - thereAfter) / before) ** (1 / counts) : 0;
    const seenAfter = after > 1e-12 ? after * (thereAfter / after) ** (1 / counts) : 0;
    return { look, state, of, seen: seenBefore + (shown > 0 ? (seenAfter * own) / shown : 0) };
  });
}

/** A sign of a year, or a maker's way seen on one part alone: its share is mixed of several figures. */
function trialsMixed(evaluation: Evaluation, look: Look, share: Share): Trial[] {
  const { draw, layout } = evaluation.model;
  const { alike: _, ...single } = look;
  const report = reportOf(single, layout.prepared.knowledge.making, draw);
  const others = evaluation.looks.filter((each) => each !== look);
  const at = (looks: readonly Look[]) => share(posteriorAtPart(evaluation, look.part, [...others, ...looks]));
  const whole = at([single]);
  if (!(whole > 0)) return [];
  const kind = campaignOf(look);
  return Object.keys(look.sign.shows).map((state) => {
    const inState = indicator(look, state);
    const own = shareIn(look.sign, state, draw);
    const said = (shows: number) => shows * report.ifThere + (1 - shows) * report.ifNot;
    const alone = at([inState]);
    if (kind === undefined || look.sign.campaign === undefined)
      return { look, state, of: (alone * said(own)) / whole, seen: (alone * own * report.ifThere) / whole };
    const after = at([inState, campaignIndicator(look, kind)]);
    const shown = own + (1 - own) * draw(look.sign.campaign.shows);
    return {
      look,
      state,
      of: ((alone - after) * said(own) + after * said(shown)) / whole,
      seen: (alone * own * report.ifThere) / whole,
    };
  });
}

function isLoneHabit({ model }: Evaluation, { sign, part }: Look): boolean {
  if (sign.hangsOn !== 'making' || model.layout.habits.includes(sign.id)) return false;
  return (
    sign.group === undefined ||
    !model.layout.prepared.looks.some(
      (each) => each.part === part && each.sign.id !== sign.id && each.sign.group === sign.group,
    )
  );
}

/** For how much of a witness a look counts with those of its group, as the model has it. */
function countsOf({ model, looks }: Evaluation, look: Look, isOfCause: (other: Look) => boolean): number {
  const { making } = model.layout.prepared.knowledge;
  const group = inGroups(looks.filter(isOfCause)).find((each) => each.includes(look)) ?? [look];
  return (
    group.reduce((sum, each) => sum + (reportOf(each, making, model.draw).counts ?? 1), 0) / group.length
  );
}

/** The looks with the report of one as it would be if only a part that shows the sign could give it. */
function onlyIfThere({ model, looks }: Evaluation, look: Look): Look[] {
  const { ifThere } = reportOf(look, model.layout.prepared.knowledge.making, model.draw);
  return looks.map((each) => (each === look ? { ...look, measured: { ifThere, ifNot: 0 } } : each));
}

const always = { in100: '100, 100–100' };
const never = { in100: '0, 0–0' };

/** A look that a part in one state of the sign's cause always shows, and no other. */
function indicator(look: Look, state: string): Look {
  const shows = Object.fromEntries(
    Object.keys(look.sign.shows).map((each) => [each, each === state ? always : never]),
  );
  const { group: _, campaign: __, span, ...sign } = look.sign;
  const isHabit = sign.hangsOn === 'making';
  return {
    key: `${look.key} in ${state}`,
    part: look.part,
    state: 'present',
    sure: 'plain',
    measured: { ifThere: 1, ifNot: 0 },
    sign: {
      ...sign,
      ...(span === undefined ? {} : { span }),
      id: isHabit ? twinOf(sign.id) : sign.id,
      shows,
    },
  };
}

/** A look that a part shows which has been through a campaign, and no other. */
function campaignIndicator(look: Look, kind: string): Look {
  const shows = Object.fromEntries(Object.keys(look.sign.shows).map((each) => [each, never]));
  return {
    ...indicator(look, ''),
    key: `${look.key} after ${kind}`,
    sign: { ...look.sign, group: undefined, shows, campaign: { kind, shows: always } },
  };
}

function twinOf(sign: string): string {
  return `${sign}, its general rate`;
}

/** A shop's file with, beside each habit, one that its work never shows: where the shop has the say, the general rate has none. */
function withTwins(shop: Shop): Shop {
  return {
    ...shop,
    habits: shop.habits.flatMap((habit) => [habit, { ...habit, sign: twinOf(habit.sign), shows: never }]),
  };
}
