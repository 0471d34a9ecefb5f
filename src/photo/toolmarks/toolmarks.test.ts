import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawnKinds, drawnMeasures } from '../../../scripts/toolmarkFeatures.ts';
import { renderMarks } from '../../../test/kits/surfaces/renderMarks.ts';
import reference from '../../../test/reference/profiles.json' with { type: 'json' };
import type { Picture } from '../picture.ts';
import { toolmarks } from './toolmarks.ts';
import { arcShift } from './toolmarksCross.ts';
import { markOdds, mostMarksRatio } from './toolmarksKinds.ts';
import { type MarkKind, markKinds } from './toolmarksNamed.ts';
import { marksPlane } from './toolmarksPlane.ts';
import { fisher, markPitch, stepAgreement } from './toolmarksSpectrum.ts';

const seed = 1850;

describe('values from outside', () => {
  test.each(reference.profiles)('the period of $id', (known) => {
    const found = markPitch(known.profile, known.stepMm, 0.5, 9);
    expect(Math.abs(found.pitchMm - known.truePeriodMm)).toBeLessThan(known.periodToleranceMm);
    expect(Math.abs(found.pitchMm - known.peakPeriodMm)).toBeLessThan(0.01);
    expect(Math.abs(found.fisherG - known.fisherG)).toBeLessThan(known.tolerance);
    expect(Math.abs(found.chance - known.chance)).toBeLessThan(known.tolerance);
  });

  test('how even places lie for a period', () => {
    const { placesMm, cases, tolerance } = reference.places;
    for (const { periodMm, agreement } of cases)
      expect(Math.abs(stepAgreement(placesMm, periodMm) - agreement)).toBeLessThan(tolerance);
  });
});

describe('its parts', () => {
  test('an arc’s places all lie on one circle', () => {
    const radius = fc.double({ min: 110, max: 900, noNaN: true });
    fc.assert(
      fc.property(
        radius,
        fc.double({ min: -0.25, max: 0.25, noNaN: true }),
        fc.boolean(),
        (r, lean, over) => {
          const bend = (over ? -1 : 1) / r;
          const start = lean / Math.hypot(1, lean);
          // The centre lies square to the mark at the middle, r away.
          const centre = [Math.sqrt(1 - start * start) / bend, -start / bend] as const;
          for (const across of [-35, -10, 0, 20, 35]) {
            const along = arcShift(lean, bend, across);
            expect(Math.hypot(along - centre[0], across - centre[1])).toBeCloseTo(r, 6);
          }
          expect(arcShift(lean, 1e-9, 30)).toBeCloseTo(lean * 30, 9);
        },
      ),
      { seed },
    );
  });

  test('a wave and its multiples are all of a regular profile, little of a restless one', () => {
    const wave = Array.from({ length: 300 }, (_, at) => Math.cos(at / 2) + 0.5 * Math.cos(at));
    expect(markPitch(wave, 0.2, 0.7, 9).regularity).toBeGreaterThan(0.95);
    expect(markPitch(wave, 0.2, 0.7, 9).pitchMm).toBeCloseTo(0.2 * 4 * Math.PI, 1);
    const random = fc.sample(fc.double({ min: -1, max: 1, noNaN: true }), { seed, numRuns: 300 });
    expect(markPitch(random, 0.2, 0.7, 9).regularity).toBeLessThan(0.25);
    expect(fisher(random).chance).toBeGreaterThan(0.001);
  });

  test('the plane of a region turns with the board', () => {
    const picture: Picture = { widthPx: 300, heightPx: 300, channels: 1, pixels: new Uint8Array(90_000) };
    const turn = 0.4;
    for (let y = 0; y < 300; y++)
      for (let x = 0; x < 300; x++) {
        const along = Math.cos(turn) * (x - 150) + Math.sin(turn) * (y - 150);
        picture.pixels[y * 300 + x] = 128 + 60 * Math.cos(along / 3);
      }
    const plane = marksPlane(picture, { x: 0, y: 0, widthPx: 300, heightPx: 300 }, 0.2, turn);
    if (plane === undefined) throw new Error('no plane');
    for (const column of [20, 60, 100]) {
      const values = [10, 40, 80].map((row) => plane.values[row * plane.along + column] as number);
      expect(Math.max(...values) - Math.min(...values)).toBeLessThan(0.06);
    }
    expect(marksPlane(picture, { x: 0, y: 0, widthPx: 40, heightPx: 40 }, 0.2, 0)).toBeUndefined();
  });
});

// Six of each; the whole proof, sixty of each, is scripts/proveToolmarks.ts, its figures in docs/toolmarks.md.
const seeds = Array.from({ length: 6 }, (_, index) => 30_001 + index);
const told = new Map<string, ReturnType<typeof tell>>();
function tell(kind: MarkKind | 'none') {
  return drawnMeasures(kind, seeds).map(({ truth, measures }) => ({
    truth,
    measures,
    odds: markOdds(measures.features, measures.edge),
  }));
}
function of(kind: MarkKind | 'none') {
  const found = told.get(kind) ?? tell(kind);
  told.set(kind, found);
  return found;
}

describe('drawn surfaces of known truth', () => {
  test('nine of ten of those told are told rightly', { timeout: 180_000 }, () => {
    const told = markKinds.flatMap((kind) =>
      of(kind).flatMap(({ odds }) => (odds.kind === 'cannot-tell' ? [] : [odds.kind === kind])),
    );
    expect(told.length).toBeGreaterThanOrEqual(15);
    expect(told.filter((isRight) => isRight).length / told.length).toBeGreaterThanOrEqual(0.9);
    for (const { odds } of markKinds.flatMap(of)) {
      expect(Math.max(...Object.values(odds.likelihoods))).toBe(1);
      expect(Math.min(...Object.values(odds.likelihoods))).toBeGreaterThanOrEqual(1 / mostMarksRatio);
    }
  });

  test('without marks it can’t tell', { timeout: 90_000 }, () => {
    expect(of('none').filter(({ odds }) => odds.kind === 'cannot-tell').length).toBeGreaterThanOrEqual(5);
  });

  test('spacing and radius are found', { timeout: 90_000 }, () => {
    // The view is a little aslant, so that a pitch is not the same all over.
    const pitches = of('rotary-planer').map(({ truth, measures }) =>
      Math.abs(measures.pitch.pitchMm / (truth.pitchMm as number) - 1),
    );
    expect(pitches.filter((each) => each < 0.03).length).toBeGreaterThanOrEqual(5);
    const off = of('circular-saw').map(({ truth, measures }) =>
      Math.abs(Math.abs(measures.cross.bend) * (truth.radiusMm as number) - 1),
    );
    expect(off.filter((each) => each < 0.08).length).toBeGreaterThanOrEqual(5);
  });
});

test('the kinds drawn are those that were learned', () =>
  expect(drawnKinds).toHaveLength(markKinds.length + 1));

test('a straight saw’s lines get no radius, a circular saw’s get theirs with an uncertainty', {
  timeout: 60_000,
}, () => {
  const look = (kind: MarkKind, at: number) => {
    const { picture, mmPerPx, directionDeg, truth } = renderMarks(kind, at);
    const whole = { x: 0, y: 0, widthPx: picture.widthPx, heightPx: picture.heightPx };
    return { truth, found: toolmarks(picture, whole, mmPerPx, (directionDeg * Math.PI) / 180) };
  };
  expect(look('straight-saw', 40_001).found?.arc).toBeUndefined();
  const { truth, found } = look('circular-saw', 40_002);
  if (found?.arc === undefined) throw new Error('no arc');
  expect(Math.abs(found.arc.radiusMm - (truth.radiusMm as number))).toBeLessThan(3 * found.arc.sigmaMm);
});
