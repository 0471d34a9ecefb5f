import { figureRange } from '../../evidence/figures.ts';
import { imitates, imitationPriors } from '../../evidence/imitation.ts';
import type { ModelPart } from '../../evidence/preparedCase.ts';
import { nowBin } from '../../evidence/preparedCase.ts';
import { type Making, shopPriors, worlds, yearPriors } from '../../evidence/worlds.ts';
import { binOf } from '../../evidence/yearAxis.ts';
import type { Alteration } from '../../knowledge/schema.ts';
import { readingIds } from '../../piece/readings.ts';
import type { Layout } from '../layout.ts';
import { alterationLikelihood, alterationShare, kindOf, type Model } from '../model.ts';
import { renewedByBin, reusedIn } from '../ordinaryTerms.ts';
import { habitStateShare } from '../partHabits.ts';
import { partTable } from '../partTable.ts';

/** A discrete network in the form the calculation `inference.posterior` takes. */
export type ExplicitNetwork = {
  variables: { id: string; states: string[] }[];
  tables: { variable: string; given: string[]; rows: number[][] }[];
  evidence: Record<string, string>;
};

/**
 * The same model written out as an ordinary network, every unknown a variable of its own: the world, the year, the shop,
 * each alteration and its year, each part's source and year, and the reading. What the looks at a part say is one
 * observed child. It answers alike by general elimination, and so checks the summation that the program uses; it is
 * practical only on a coarse year axis.
 */
export function explicitNetwork(model: Model): ExplicitNetwork {
  const { layout } = model;
  const bins = Array.from({ length: layout.prepared.axis.bins }, (_, bin) => `b${bin}`);
  const network: ExplicitNetwork = { variables: [], tables: [], evidence: {} };
  const add = (id: string, states: string[], given: string[], row: (given: number[]) => number[]) => {
    const sizes = given.map(
      (each) => network.variables.find((variable) => variable.id === each)?.states.length ?? 0,
    );
    network.variables.push({ id, states });
    network.tables.push({ variable: id, given, rows: [...combinations(sizes)].map(row) });
  };
  const years = yearPriors(layout.prepared);
  const shops = shopPriors(layout.prepared, model.draw);
  add(
    'world',
    worlds.map((_, w) => `w${w}`),
    [],
    () => [...model.worldPrior],
  );
  add('year', bins, ['world'], ([w = 0]) => [...years[worlds[w]?.making ?? 'period']]);
  add(
    'shop',
    ['unlisted', ...layout.prepared.shops.map((shop) => shop.id)],
    ['world', 'year'],
    ([w = 0, y = 0]) => shopsOfMaking(model, worlds[w]?.making ?? 'period', y, shops),
  );
  layout.habits.forEach((id) => {
    add(`habit ${id}`, ['no', 'yes'], ['world', 'shop'], ([w = 0, shop = 0]) => {
      // Alone, the share of a state in which only this habit's bit is asked for.
      const context = { prepared: layout.prepared, draw: model.draw, habits: [id] };
      return [0, 1].map((habits) => habitStateShare({ world: w, shop, habits }, context));
    });
  });
  for (const alteration of layout.prepared.alterations) addAlteration(model, alteration, add, network, bins);
  const structural: { part: ModelPart; sources: string[] }[] = [];
  for (const part of layout.prepared.parts) {
    const sources = addPart(model, part, add, network, bins);
    if (part.structural) structural.push({ part, sources });
  }
  addReading(layout, structural, add);
  if (model.told !== undefined) {
    const told = model.told;
    add('told of the whole', ['seen', 'other'], ['reading'], ([reading = 0]) => {
      const share = told[readingIds[reading] ?? 'period-intact'];
      return [share, 1 - share];
    });
    network.evidence['told of the whole'] = 'seen';
  }
  return network;
}

type Add = (id: string, states: string[], given: string[], row: (given: number[]) => number[]) => void;

function addAlteration(
  model: Model,
  alteration: Alteration,
  add: Add,
  network: ExplicitNetwork,
  bins: string[],
): void {
  const { prepared, makeUps } = model.layout;
  const id = `alteration ${alteration.id}`;
  add(id, ['not', 'happened'], ['world'], ([w = 0]) => {
    const kind = kindOf(worlds[w]?.making ?? 'period');
    return [false, true].map((happened) => alterationShare(alteration, kind, happened, model.draw));
  });
  const seen = [false, true].map((happened) =>
    alterationLikelihood(alteration, happened, prepared.looks, prepared, model.draw),
  );
  add(`looks at ${id}`, ['seen', 'other'], [id], ([happened = 0]) => [
    seen[happened] ?? 1,
    1 - (seen[happened] ?? 1),
  ]);
  network.evidence[`looks at ${id}`] = 'seen';
  if (makeUps.includes(alteration)) return;
  add(`year of ${alteration.id}`, bins, ['year'], ([y = 0]) =>
    uniformFrom(model, Math.max(y, earliestBin(model, alteration))),
  );
}

/** How probable each shop is as the maker of period work of a year, or as the one a copy is made after. */
function shopsOfMaking(model: Model, making: Making, year: number, shops: readonly Float64Array[]): number[] {
  if (making === 'period') return shops.map((line) => line[year] ?? 0);
  return imitates(making)
    ? imitationPriors(model.layout.prepared, model.draw, making)
    : shops.map((_, s) => (s === 0 ? 1 : 0));
}

/** Adds a part's source, year and looks; returns the names of its sources. */
function addPart(
  model: Model,
  part: ModelPart,
  add: Add,
  network: ExplicitNetwork,
  bins: string[],
): string[] {
  const { layout, draw, old } = model;
  const { prepared } = layout;
  const timed = prepared.alterations.filter(
    (each) => !layout.makeUps.includes(each) && each.changes[part.kind] !== undefined,
  );
  const makeUps = layout.makeUps.filter((each) => each.changes[part.kind] !== undefined);
  const sources = ['own', 'renewed', 'reused', ...[...timed, ...makeUps].map((each) => each.id)];
  const renewed = renewedByBin(model, part);
  add(
    `source of ${part.id}`,
    sources,
    ['world', 'year', ...[...timed, ...makeUps].map((each) => `alteration ${each.id}`)],
    ([w = 0, y = 0, ...happened]) => {
      const row = new Array<number>(sources.length).fill(0);
      let left = 1;
      // Timed alterations choose first, in order; then the make-up ones, the last of them foremost; then ordinary use.
      const order = [
        ...timed.map((_, i) => i),
        ...makeUps.map((_, i) => timed.length + makeUps.length - 1 - i),
      ];
      for (const i of order) {
        const change = [...timed, ...makeUps][i]?.changes[part.kind];
        const share = happened[i] === 1 && change !== undefined ? figureRange(change).best : 0;
        row[3 + i] = left * share;
        left *= 1 - share;
      }
      const q = reusedIn(model, part, w);
      const r = renewed[y] ?? 0;
      row[0] = left * (1 - q) * (1 - r);
      row[1] = left * (1 - q) * r;
      row[2] = left * q;
      return row;
    },
  );
  const timedYears = timed.map((each) => `year of ${each.id}`);
  add(
    `year of ${part.id}`,
    bins,
    [`source of ${part.id}`, 'year', ...timedYears],
    ([s = 0, y = 0, ...altered]) => {
      if (s === 0) return pointAt(bins.length, y);
      if (s === 1) return uniformFrom(model, y);
      if (s === 2) return [...old];
      if (s < 3 + timed.length) return pointAt(bins.length, altered[s - 3] ?? 0);
      const to = makeUps[s - 3 - timed.length]?.changes[part.kind]?.to;
      return to === 'other-old' ? [...old] : uniformFrom(model, y);
    },
  );
  const mine = prepared.looks.filter(
    (look) => look.part === part.id && !look.sign.hangsOn.startsWith('alteration/'),
  );
  if (mine.length === 0) return sources;
  const scenarios = layout.scenarios.flatMap((scenario) =>
    Array.from({ length: 2 ** layout.habits.length }, (_, habits) => ({ ...scenario, habits })),
  );
  // The old part's table has its years summed out, so it is tabulated year by year here.
  const context = {
    prepared,
    draw,
    shares: layout.shares,
    scenarios,
    habits: layout.habits,
    old,
  };
  const table = partTable(part, mine, context);
  const oldAt = bins.map(
    (_, bin) => partTable(part, mine, { ...context, old: Float64Array.from(pointAt(bins.length, bin)) }).old,
  );
  const to = (s: number) => [...timed, ...makeUps][s - 3]?.changes[part.kind]?.to;
  add(
    `looks at ${part.id}`,
    ['seen', 'other'],
    [
      'world',
      'shop',
      `source of ${part.id}`,
      `year of ${part.id}`,
      ...layout.habits.map((id) => `habit ${id}`),
    ],
    ([w = 0, shop = 0, s = 0, t = 0, ...ways]) => {
      const habits = ways.reduce((bits, way, h) => bits | (way << h), 0);
      const scenario = scenarios.findIndex(
        (each) => each.world === w && each.shop === shop && each.habits === habits,
      );
      const own = () => (table.own[w]?.[t] ?? 0) * (table.ownMaking[scenario] ?? 1);
      const kind = s === 0 ? 'own' : s === 1 ? 'repair' : s === 2 ? 'other-old' : to(s);
      const seen =
        kind === 'own'
          ? own()
          : kind === 'repair'
            ? table.repair[t]
            : kind === 'improve'
              ? table.improve[t]
              : oldAt[t];
      return [seen ?? 0, 1 - (seen ?? 0)];
    },
  );
  network.evidence[`looks at ${part.id}`] = 'seen';
  return sources;
}

/** The reading: from the making, what was altered, and whether every structural part is of the making. */
function addReading(
  layout: Layout,
  structural: readonly { part: ModelPart; sources: string[] }[],
  add: Add,
): void {
  const { alterations } = layout.prepared;
  const upkeep = new Set(alterations.filter((each) => each.class === 'upkeep').map((each) => each.id));
  let chain = '';
  structural.forEach(({ part, sources }, index) => {
    const id = `renewed up to ${index}`;
    add(
      id,
      ['no', 'yes'],
      [`source of ${part.id}`, ...(chain === '' ? [] : [chain])],
      ([s = 0, before = 0]) => {
        const source = sources[s] ?? '';
        const now = before === 1 || !(source === 'own' || upkeep.has(source));
        return now ? [0, 1] : [1, 0];
      },
    );
    chain = id;
  });
  const telling = alterations.filter((each) => each.class !== 'upkeep');
  add(
    'reading',
    [...readingIds],
    ['world', ...(chain === '' ? [] : [chain]), ...telling.map((each) => `alteration ${each.id}`)],
    ([w = 0, ...rest]) => {
      const renewed = chain !== '' && rest[0] === 1;
      const happened = telling.filter((_, i) => rest[i + (chain === '' ? 0 : 1)] === 1);
      const has = (kind: string) => happened.some((each) => each.class === kind);
      const making = worlds[w]?.making ?? 'period';
      const later = {
        'bench-copy': 'later-bench-copy',
        'machine-copy': 'later-machine-copy',
        'to-deceive': 'made-to-deceive',
        period: '',
      }[making];
      const period = has('make-up')
        ? 'made-up'
        : has('improve')
          ? 'period-altered'
          : has('repair') || renewed
            ? 'period-repaired'
            : 'period-intact';
      return readingIds.map((id) => (id === (later === '' ? period : later) ? 1 : 0));
    },
  );
}

function earliestBin(model: Model, alteration: Alteration): number {
  return alteration.earliest === undefined ? 0 : binOf(model.layout.prepared.axis, alteration.earliest);
}

function uniformFrom(model: Model, bin: number): number[] {
  const { bins } = model.layout.prepared.axis;
  const now = nowBin(model.layout.prepared);
  const from = Math.min(bin, now);
  return Array.from({ length: bins }, (_, b) => (b >= from && b <= now ? 1 / (now - from + 1) : 0));
}

function pointAt(length: number, at: number): number[] {
  return Array.from({ length }, (_, i) => (i === at ? 1 : 0));
}

/** All combinations of indices below the sizes, the last changing fastest. */
function* combinations(sizes: readonly number[]): Generator<number[]> {
  const [first, ...rest] = sizes;
  if (first === undefined) {
    yield [];
    return;
  }
  for (let i = 0; i < first; i++) for (const tail of combinations(rest)) yield [i, ...tail];
}
