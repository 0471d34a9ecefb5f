import { isClaimed } from './claimedShop.ts';
import type { Draw } from './figures.ts';
import type { PreparedCase } from './preparedCase.ts';
import { binOf, lineAt, midYear } from './yearAxis.ts';

export type Making = 'period' | 'bench-copy' | 'machine-copy' | 'to-deceive';

/** All makings, period first. */
export const makings: readonly Making[] = ['period', 'bench-copy', 'machine-copy', 'to-deceive'];

/**
 * One way the main body came to be, with the hidden common causes that rule all its parts at once: whether a hand
 * copyist or faker was thorough, whether the piece was used or spared, whether its bare surfaces were scrubbed, whether it was
 * built of old parts. Without them ten hand-planed parts of one copy would count as ten witnesses.
 */
export type World = {
  making: Making;
  /** Keys into the knowledge's tooling, ageing and use lines. */
  tooling: string;
  ageing: string;
  use: string;
  /** Whether its maker built it largely of parts and boards of older pieces. */
  stock: 'new' | 'old';
};

/** All worlds, period first. */
export const worlds: readonly World[] = [
  { making: 'period', tooling: 'period', ageing: 'period', use: 'used', stock: 'new' },
  { making: 'period', tooling: 'period', ageing: 'period', use: 'spared', stock: 'new' },
  { making: 'period', tooling: 'period', ageing: 'scrubbed', use: 'used', stock: 'new' },
  { making: 'period', tooling: 'period', ageing: 'period', use: 'used', stock: 'old' },
  { making: 'bench-copy', tooling: 'bench-copy-thorough', ageing: 'bench-copy', use: 'used', stock: 'new' },
  { making: 'bench-copy', tooling: 'bench-copy-thorough', ageing: 'bench-copy', use: 'spared', stock: 'new' },
  { making: 'bench-copy', tooling: 'bench-copy-ordinary', ageing: 'bench-copy', use: 'used', stock: 'new' },
  { making: 'bench-copy', tooling: 'bench-copy-ordinary', ageing: 'bench-copy', use: 'spared', stock: 'new' },
  { making: 'bench-copy', tooling: 'bench-copy-ordinary', ageing: 'bench-copy', use: 'used', stock: 'old' },
  { making: 'machine-copy', tooling: 'machine-copy', ageing: 'machine-copy', use: 'used', stock: 'new' },
  { making: 'machine-copy', tooling: 'machine-copy', ageing: 'machine-copy', use: 'spared', stock: 'new' },
  {
    making: 'to-deceive',
    tooling: 'to-deceive-thorough',
    ageing: 'to-deceive-thorough',
    use: 'to-deceive-thorough',
    stock: 'new',
  },
  {
    making: 'to-deceive',
    tooling: 'to-deceive-ordinary',
    ageing: 'to-deceive-ordinary',
    use: 'to-deceive-ordinary',
    stock: 'new',
  },
  {
    making: 'to-deceive',
    tooling: 'to-deceive-thorough',
    ageing: 'to-deceive-thorough',
    use: 'to-deceive-thorough',
    stock: 'old',
  },
  {
    making: 'to-deceive',
    tooling: 'to-deceive-ordinary',
    ageing: 'to-deceive-ordinary',
    use: 'to-deceive-ordinary',
    stock: 'old',
  },
];

/**
 * By bits (1 tooling, 2 ageing, 4 use are looked at, 8 what it was built of) and world: the first world that such looks do not tell from it. Those of
 * one making have the same years.
 */
export const worldsAlike: readonly (readonly number[])[] = Array.from({ length: 16 }, (_, bits) =>
  worlds.map((world) =>
    worlds.findIndex(
      (each) =>
        each.making === world.making &&
        ((bits & 1) === 0 || each.tooling === world.tooling) &&
        ((bits & 2) === 0 || each.ageing === world.ageing) &&
        ((bits & 4) === 0 || each.use === world.use) &&
        ((bits & 8) === 0 || each.stock === world.stock),
    ),
  ),
);

/** How probable each world is before anything is seen; sums to 1. */
export function worldPriors(prepared: PreparedCase, draw: Draw): number[] {
  const { making } = prepared.knowledge;
  const odds = making.startingOdds[prepared.odds];
  if (odds === undefined) throw new RangeError(`worldPriors needs known starting odds, got ${prepared.odds}`);
  const total = odds.period + odds['bench-copy'] + odds['machine-copy'] + odds['to-deceive'];
  return worlds.map((world) => {
    const ofOldStock = world.making === 'machine-copy' ? 0 : draw(making.oldStock[world.making]);
    const stock = world.stock === 'old' ? ofOldStock : 1 - ofOldStock;
    const sparedShare = draw(world.making === 'period' ? making.spared.period : making.spared.later);
    const spared = world.making === 'to-deceive' ? 1 : world.use === 'spared' ? sparedShare : 1 - sparedShare;
    let manner = 1;
    if (world.making === 'bench-copy' || world.making === 'to-deceive') {
      const thorough = draw(making.thorough[world.making]);
      manner = world.tooling.endsWith('-thorough') ? thorough : 1 - thorough;
    }
    const scrubbedShare = draw(making.scrubbed);
    const scrubbed =
      world.making !== 'period'
        ? 1
        : world.ageing === 'scrubbed'
          ? scrubbedShare / (1 - sparedShare)
          : world.use === 'used'
            ? 1 - scrubbedShare / (1 - sparedShare)
            : 1;
    // Period work and copies of old stock count as used and plainly made: who built so was no purist.
    const rest = world.stock === 'old' && world.making !== 'to-deceive' ? 1 : spared * manner * scrubbed;
    return (odds[world.making] / total) * stock * rest;
  });
}

/**
 * When a piece of each making would have been made: share by bin, each summing to 1. A period piece falls within the
 * style's years, with a provincial lag after and a short slack before; a later piece after the style had gone.
 */
export function yearPriors(prepared: PreparedCase): Record<Making, Float64Array> {
  const [from, to] = prepared.span;
  const { whenMade, provincialLagYears: lag } = prepared.knowledge.making;
  const period = [
    [from - lag / 3, 0],
    [from, 1],
    [to, 1],
    [to + lag, 0],
  ] as const;
  const later = (line: readonly (readonly [number, number])[]) =>
    shares(prepared, (year) => (year > to ? lineAt(line, year) : 0));
  return {
    period: shares(prepared, (year) => lineAt(period, year)),
    'bench-copy': later(whenMade['bench-copy']),
    'machine-copy': later(whenMade['machine-copy']),
    'to-deceive': later(whenMade['to-deceive']),
  };
}

/** Shares by bin from a height by year, never after the current year; the last bin takes all if none has any height. */
function shares(prepared: PreparedCase, height: (year: number) => number): Float64Array {
  const { axis } = prepared;
  const bins = Float64Array.from({ length: axis.bins }, (_, bin) => Math.max(0, height(midYear(axis, bin))));
  const total = bins.reduce((sum, each) => sum + each, 0);
  if (total > 0) return bins.map((each) => each / total);
  bins[binOf(axis, prepared.yearNow)] = 1;
  return bins;
}

/**
 * How probable each shop is for a period piece, by bin: index 0 is "unlisted", then the shops in order. A shop counts
 * only in its own years; a claimed place makes the shops it names likelier and the others rarer.
 */
export function shopPriors(prepared: PreparedCase, draw: Draw): Float64Array[] {
  const { axis, shops, place } = prepared;
  const { fits, elsewhere } = prepared.knowledge.making.claimedPlace;
  const priors = shops.map((shop) => {
    const share = draw(shop.share) * (place.trim() === '' ? 1 : isClaimed(shop, place) ? fits : elsewhere);
    const line = new Float64Array(axis.bins);
    for (let bin = 0; bin < axis.bins; bin++) {
      const start = axis.fromYear + bin * axis.stepYears;
      if (start + axis.stepYears > shop.years[0] && start <= shop.years[1]) line[bin] = share;
    }
    return line;
  });
  const unlisted = new Float64Array(axis.bins);
  for (let bin = 0; bin < axis.bins; bin++) {
    let listed = 0;
    for (const each of priors) listed += each[bin] as number;
    // Listed shops never take more than nine tenths: the files do not hold every workshop.
    const scale = listed > 0.9 ? 0.9 / listed : 1;
    if (scale < 1) for (const each of priors) each[bin] = (each[bin] as number) * scale;
    unlisted[bin] = 1 - listed * scale;
  }
  return [unlisted, ...priors];
}
