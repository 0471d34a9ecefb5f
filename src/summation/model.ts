import type { Draw } from '../evidence/figures.ts';
import { imitates, imitationPriors } from '../evidence/imitation.ts';
import type { Look, PreparedCase } from '../evidence/preparedCase.ts';
import {
  lookedOverWeights,
  observationWeights,
  type ReadingWeights,
  timesWeights,
} from '../evidence/readingWeights.ts';
import { inGroups, looksLikelihood, shareIn } from '../evidence/signShares.ts';
import { type Making, makings, shopPriors, worldPriors, worlds } from '../evidence/worlds.ts';
import type { Alteration } from '../knowledge/schema.ts';
import type { Layout, ScenarioCells } from './layout.ts';
import { Worked } from './worked.ts';

/** The model with its figures fixed: priors over cutset state × scenario × bin. */
export type Model = {
  layout: Layout;
  draw: Draw;
  prior: Float64Array;
  old: Float64Array;
  worldPrior: readonly number[];
  /** What was seen of the piece as a whole, by reading; undefined where nothing speaks of the reading alone. */
  told: ReadingWeights | undefined;
  /** What is summed under a frame and a draw, each by all that it hangs on, as a text; in tables whose values only their own file knows. */
  worked: Worked<Record<string, readonly [string, unknown]>>;
};

/**
 * Fixes the figures. The prior of a cell is that of its world, year, shop and make-up state, times what the looks that
 * hang on the make-up alterations say.
 *
 * @param worked  what was summed before in the layout's frame with this draw
 */
export function fixModel(
  layout: Layout,
  draw: Draw,
  looks: readonly Look[] = layout.prepared.looks,
  told: ReadingWeights | undefined = toldOf(layout.prepared, draw),
  worked: Model['worked'] = new Worked(),
): Model {
  const { prepared, scenarios, cutsetStates, makeUps, cells, cellCount, years } = layout;
  const worldPrior = worldPriors(prepared, draw);
  const shops = shopPriors(prepared, draw);
  const scenarioShops = new Set(scenarios.map((scenario) => scenario.shop));
  const prior = new Float64Array(cutsetStates.length * cellCount);
  // Shops without scenarios of their own stand with the unlisted.
  const unlisted = (shops[0] as Float64Array).slice();
  shops.forEach((line, s) => {
    if (!scenarioShops.has(s))
      for (let bin = 0; bin < line.length; bin++)
        unlisted[bin] = (unlisted[bin] as number) + (line[bin] as number);
  });
  const imitated = imitatedShares(layout, draw);
  cutsetStates.forEach((cutsetState, m) => {
    const ofCutsetState = pieceKinds.map((kind) =>
      makeUps.reduce((scale, alteration, a) => {
        const happened = cutsetState.happened[a] === true;
        return (
          scale *
          alterationShare(alteration, kind, happened, draw) *
          alterationLikelihood(alteration, happened, looks, prepared, draw)
        );
      }, 1),
    );
    scenarios.forEach((scenario, c) => {
      const making = worlds[scenario.world]?.making ?? 'period';
      const scale =
        (worldPrior[scenario.world] ?? 0) * (ofCutsetState[pieceKinds.indexOf(kindOf(making))] ?? 0);
      const { first, count, offset } = cells[c] as ScenarioCells;
      const at = m * cellCount + offset;
      const line = scenario.shop === 0 ? unlisted : shops[scenario.shop];
      const after = making === 'period' ? 1 : (imitated[making]?.[scenario.shop] ?? 1);
      for (let i = 0; i < count; i++) {
        const shop = making === 'period' ? (line?.[first + i] ?? 0) : after;
        prior[at + i] = scale * (years[making][first + i] ?? 0) * shop;
      }
    });
  });
  return { layout, draw, prior, old: years.period, worldPrior, told, worked };
}

/** By making: the share of each shop that it may be made after; shops without scenarios of their own stand with none. */
function imitatedShares({ prepared, scenarios }: Layout, draw: Draw): Partial<Record<Making, number[]>> {
  return Object.fromEntries(
    makings.filter(imitates).map((making) => {
      const own = new Set(
        scenarios.filter((each) => worlds[each.world]?.making === making).map((each) => each.shop),
      );
      const [none = 1, ...shops] = imitationPriors(prepared, draw, making);
      const silent = shops.reduce((sum, share, s) => (own.has(s + 1) ? sum : sum + share), none);
      return [making, [silent, ...shops]];
    }),
  );
}

function toldOf(prepared: PreparedCase, draw: Draw): ReadingWeights | undefined {
  const { observations, lookedOver } = prepared;
  if (observations.length === 0 && !lookedOver) return undefined;
  const { making } = prepared.knowledge;
  return timesWeights([
    ...observations.map((each) => observationWeights(each, making, draw)),
    ...(lookedOver ? [lookedOverWeights(making, draw)] : []),
  ]);
}

/** Kinds of piece that alterations happen to at rates of their own. */
export const pieceKinds = ['period', 'later', 'to-deceive'] as const;
export type PieceKind = (typeof pieceKinds)[number];

/** The kind of piece that a making gives. */
export function kindOf(making: Making): PieceKind {
  return making === 'period' || making === 'to-deceive' ? making : 'later';
}

/** How probable it is that an alteration happened (or did not) to a kind of piece; a fake is as other later pieces unless told. */
export function alterationShare(
  { happened: rates }: Alteration,
  kind: PieceKind,
  happened: boolean,
  draw: Draw,
): number {
  const share = draw(rates[kind] ?? rates.later);
  return happened ? share : 1 - share;
}

/** How probable the looks that hang on an alteration are, if it happened or did not. */
export function alterationLikelihood(
  alteration: Alteration,
  happened: boolean,
  looks: readonly Look[],
  prepared: PreparedCase,
  draw: Draw,
): number {
  const mine = looks.filter((look) => look.sign.hangsOn === `alteration/${alteration.id}`);
  if (mine.length === 0) return 1;
  const state = happened ? 'happened' : 'not';
  return looksLikelihood(inGroups(mine), prepared.knowledge.making, draw, (look) =>
    shareIn(look.sign, state, draw),
  );
}
