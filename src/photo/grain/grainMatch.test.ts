import { describe, expect, test } from 'vitest';
import { drawPairs } from '../../../scripts/grain/draws.ts';
import { areaUnderCurve } from '../../../scripts/grain/score.ts';
import { grainPair } from '../../../test/kits/surfaces/grainPairs.ts';
import { smoothNoise } from '../../../test/kits/surfaces/smoothNoise.ts';
import { logRatioCost } from '../../calibration/scoring.ts';
import type { Picture, Region } from '../picture.ts';
import { leastContrast, silenceOf } from './grainFeatures.ts';
import { matchGrain } from './grainMatch.ts';
import { grainOdds, mostRatio } from './grainOdds.ts';
import shipped from './grainShipped.json' with { type: 'json' };
import { type FacingStrips, facingStrips } from './grainStrips.ts';

/** Straight stripes running down, those below the band moved to the right by some pixels. */
function striped(movedPx: number, seedBelow = 5): Picture {
  const [widthPx, heightPx] = [240, 320];
  const pixels = Uint8Array.from({ length: widthPx * heightPx }, (_, at) => {
    const [x, y] = [at % widthPx, Math.floor(at / widthPx)];
    if (y >= 130 && y < 190) return 200;
    const seed = y < 130 ? 5 : seedBelow;
    const along = y < 130 ? x : x - movedPx;
    return Math.round(
      120 +
        25 * smoothNoise(seed, along / 4, 0.5) +
        15 * smoothNoise(seed + 1, along / 9, 0.5) +
        3 * smoothNoise(9, x / 1.5, y / 1.5),
    );
  });
  return { widthPx, heightPx, channels: 1, pixels };
}

const above: Region = { x: 8, y: 8, widthPx: 224, heightPx: 118 };
const below: Region = { x: 8, y: 194, widthPx: 224, heightPx: 118 };

/** The picture and a region turned clockwise by a quarter. */
function turned(picture: Picture): Picture {
  const [widthPx, heightPx] = [picture.heightPx, picture.widthPx];
  const pixels = Uint8Array.from({ length: widthPx * heightPx }, (_, at) => {
    const [x, y] = [at % widthPx, Math.floor(at / widthPx)];
    return picture.pixels[(picture.heightPx - 1 - x) * picture.widthPx + y] as number;
  });
  return { widthPx, heightPx, channels: 1, pixels };
}

function turnedRegion({ x, y, widthPx, heightPx }: Region, whole: Picture): Region {
  return { x: whole.heightPx - y - heightPx, y: x, widthPx: heightPx, heightPx: widthPx };
}

function strips(picture: Picture, a: Region, b: Region, directionDeg: number): FacingStrips {
  const found = facingStrips(picture, a, b, directionDeg);
  if (typeof found === 'string') throw new Error(found);
  return found;
}

function odds(found: FacingStrips) {
  const match = matchGrain(found);
  return grainOdds(match, silenceOf(match, Math.min(...found.strips.map(({ rows }) => rows))));
}

describe('the match', () => {
  test('finds how far the grain was moved, and to which side', () => {
    for (const moved of [-6, 0, 4.5]) {
      const match = matchGrain(strips(striped(moved), above, below, 90));
      // Along is down, so the side at 90° clockwise from it is the left: moved to the right is negative.
      expect(match.shiftPx).toBeCloseTo(-moved, 0);
      expect(match.correlation).toBeGreaterThan(0.9);
    }
  });

  test('says the same of the picture turned by a quarter, and of the two regions named the other way round', () => {
    const picture = striped(3);
    const upright = matchGrain(strips(picture, above, below, 90));
    const lying = matchGrain(
      strips(turned(picture), turnedRegion(above, picture), turnedRegion(below, picture), 180),
    );
    expect(lying.correlation).toBeCloseTo(upright.correlation, 2);
    expect(lying.shiftPx).toBeCloseTo(upright.shiftPx, 1);
    const swapped = strips(picture, below, above, 90);
    expect(swapped.swapped).toBe(true);
    expect(matchGrain(swapped).correlation).toBe(upright.correlation);
  });

  test('lighting that slopes across and down changes little', () => {
    const picture = striped(0);
    const lit: Picture = {
      ...picture,
      pixels: picture.pixels.map(
        (value, at) => value * (0.6 + 0.35 * ((at % 240) / 240) + 0.00012 * Math.floor(at / 240)),
      ),
    };
    const [before, after] = [picture, lit].map(
      (each) => matchGrain(strips(each, above, below, 90)).correlation,
    );
    expect(Math.abs((before as number) - (after as number))).toBeLessThan(0.05);
  });

  test('strips of other stripes fit no better than strips that do not face each other', () => {
    const match = matchGrain(strips(striped(0, 77), above, below, 90));
    expect(match.correlation).toBeLessThan(Math.max(...match.null.correlations) + 0.1);
    expect(odds(strips(striped(0, 77), above, below, 90)).likelihoodRatio).toBeLessThan(0.5);
    expect(odds(strips(striped(0), above, below, 90)).likelihoodRatio).toBeGreaterThan(10);
  });

  test('strips beside each other, and strips that overlap, are told apart from facing ones', () => {
    const picture = striped(0);
    expect(facingStrips(picture, above, { ...above, y: 60 }, 90)).toBe('overlap-along');
    expect(facingStrips(picture, { ...above, widthPx: 90 }, { ...below, x: 130, widthPx: 90 }, 90)).toBe(
      'no-overlap-across',
    );
  });
});

describe('the ratio', () => {
  test('is held within what the pairs it was learned on can carry', () => {
    const match = matchGrain(strips(striped(0), above, below, 90));
    const surest = grainOdds({ ...match, correlation: 0.9999, shiftPx: 0 }, undefined);
    expect(surest.likelihoodRatio).toBe(Math.min(mostRatio, shipped.highest));
    expect(shipped.highest).toBeLessThanOrEqual(shipped.pairsOfTwo / 3);
    expect(surest.held).toBe(true);
    const worst = grainOdds({ ...match, correlation: -0.5, shiftPx: match.mostShiftPx }, undefined);
    expect(worst.likelihoodRatio).toBe(Math.max(1 / mostRatio, shipped.lowest));
    expect(1 / shipped.lowest).toBeLessThanOrEqual(shipped.pairsOfOne / 3);
  });

  test('is one, with the reason, where there is too little to see', () => {
    const short = strips(striped(0), { ...above, y: 114, heightPx: 12 }, below, 90);
    const match = matchGrain(short);
    expect(silenceOf(match, Math.min(...short.strips.map(({ rows }) => rows)))).toBe('short');
    expect(grainOdds(match, 'short').likelihoodRatio).toBe(1);
    const narrow = strips(striped(0), { ...above, widthPx: 36 }, below, 90);
    expect(silenceOf(matchGrain(narrow), 100)).toBe('narrow');
    const plain = striped(0);
    const faint = strips(
      { ...plain, pixels: plain.pixels.map((value) => 120 + Math.round((value - 120) / 60)) },
      above,
      below,
      90,
    );
    expect(matchGrain(faint).profiles[0].contrast).toBeLessThan(leastContrast);
    expect(odds(faint).likelihoodRatio).toBe(1);
  });
});

describe('on rendered boards of known truth, seeds that the ratio was not learned on', () => {
  const firstSeed = 3_000_000;

  test('the seeds are others', () => {
    expect(shipped.firstSeed + 10_000).toBeLessThan(firstSeed);
    const [one, again] = [
      grainPair('straight', true, firstSeed, 0.5),
      grainPair('straight', true, firstSeed, 0.5),
    ];
    expect(one.rendered.picture.pixels).toEqual(again.rendered.picture.pixels);
  });

  test('clear straight grain: 420 pairs, half of one piece; area under the ROC at least 0.95, ratios calibrated', {
    timeout: 120_000,
  }, () => {
    const draws = drawPairs('straight', 420, firstSeed, 0.55);
    const ratios = (onePiece: boolean) =>
      draws
        .filter((draw) => draw.onePiece === onePiece)
        .map(({ match, silence }) => Math.log(grainOdds(match, silence).likelihoodRatio));
    const [one, two] = [ratios(true), ratios(false)];
    expect([one.length, two.length]).toEqual([210, 210]);
    expect(areaUnderCurve(one, two)).toBeGreaterThanOrEqual(0.95);
    // A set of ratios that says nothing costs 1, one that misleads costs more.
    expect(logRatioCost(one, two)).toBeLessThan(0.4);
    // Where ratios can be taken at their word, at most 1 in r of the pairs of two has a ratio of r or more (Markov's inequality).
    for (const ratio of [3, 10, 50]) {
      expect(two.filter((each) => each >= Math.log(ratio)).length / two.length).toBeLessThanOrEqual(
        1 / ratio + 0.02,
      );
      expect(one.filter((each) => each <= -Math.log(ratio)).length / one.length).toBeLessThanOrEqual(
        1 / ratio + 0.02,
      );
    }
    // Planted fault: truth shuffled, the area falls to a half.
    const mixed = [...one, ...two].map((each, at) => ({ each, side: at % 2 }));
    const half = areaUnderCurve(
      mixed.filter(({ side }) => side === 0).map(({ each }) => each),
      mixed.filter(({ side }) => side === 1).map(({ each }) => each),
    );
    expect(Math.abs(half - 0.5)).toBeLessThan(0.1);
  });

  test.each(['plain', 'painted'] as const)(
    '%s surfaces: it says that it cannot tell on nineteen in twenty',
    { timeout: 60_000 },
    (kind) => {
      const draws = drawPairs(kind, 60, firstSeed, 0.6);
      expect(draws.filter(({ silence }) => silence !== undefined).length).toBeGreaterThanOrEqual(57);
    },
  );
});
