import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import reference from '../../test/reference/bodyMeasures.json' with { type: 'json' };
import { sum } from '../ground/statistics.ts';
import { agreement } from './agreement.ts';
import { allAdults, bodyMeasures, normalBelow, peopleScale, shareBelow } from './bodyMeasures.ts';
import { contactsOf } from './contactsOf.ts';
import { contraryPlaces } from './contraryPlaces.ts';
import type { Surface } from './surface.ts';

const seed = 1790;

describe('body measures', () => {
  test.each(Object.entries(reference.measures))('%s has the percentiles that were read', (name, wanted) => {
    const found = bodyMeasures[name as keyof typeof reference.measures];
    for (const sex of ['men', 'women'] as const)
      [-1.645, 0, 1.645].forEach((z, index) => {
        const at = found[sex].mean + z * found[sex].sd;
        expect(Math.abs(at - (wanted[sex][index] as number))).toBeLessThanOrEqual(reference.toleranceMm);
      });
  });

  test('the normal share is that of printed tables', () => {
    for (const [z, share] of [
      [0, 0.5],
      [1, 0.841345],
      [1.96, 0.975002],
      [-1.645, 0.049985],
    ] as const)
      expect(Math.abs(normalBelow(z) - share)).toBeLessThan(2e-6);
  });

  test('half of people are below the middle, scaled as they were', () => {
    const { mean, sd } = allAdults(bodyMeasures.footBreadth);
    expect(mean).toBeCloseTo(92.5 * peopleScale.mean, 9);
    expect(sd).toBeGreaterThan(6);
    expect(shareBelow(bodyMeasures.footBreadth, mean)).toBeCloseTo(0.5, 2);
  });
});

describe('where a piece is touched', () => {
  const of = (kind: string, sizes = {}) => contactsOf([{ part: 'p', kind }], sizes).surfaces[0] as Surface;
  const row = (surface: Surface, face: string) => surface.grid[surface.faces.indexOf(face)] as number[];

  test('a rocker bears near its middle and not at its ends', () => {
    const sole = row(of('rocker', { depth: 800 }), 'underside');
    expect(sole.indexOf(Math.max(...sole))).toBeGreaterThan(7);
    expect(sole.indexOf(Math.max(...sole))).toBeLessThan(14);
    expect(Math.max(sole[0] ?? 1, sole.at(-1) ?? 1)).toBeLessThan(0.05);
  });

  test('every surface has its most touched place at 1 and nothing below 0, whatever the sizes', () => {
    const kinds = ['arm', 'crest-rail', 'door', 'drawer', 'drawer-runner', 'foot', 'front-foot', 'front-rail', 'front-stretcher', 'leg', 'medial-stretcher', 'plank-seat', 'rear-foot', 'rocker', 'side-stretcher', 'splat', 'top', 'back-stretcher']; // biome-ignore format: a list
    const size = fc.double({ min: 20, max: 1500, noNaN: true });
    const sizes = fc.record({
      'seat-height': size,
      'stretcher-height': size,
      'arm-height': size,
      depth: size,
      width: fc.double({ min: 300, max: 2000, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.constantFrom(...kinds), sizes, (kind, measured) => {
        for (const surface of contactsOf([{ part: 'p', kind }], measured).surfaces) {
          expect(Math.max(...surface.grid.flat())).toBeCloseTo(1, 12);
          expect(Math.min(...surface.grid.flat())).toBeGreaterThanOrEqual(-1e-9);
          expect(surface.per100Uses).toBeGreaterThanOrEqual(0);
          expect(surface.per100Uses).toBeLessThanOrEqual(100);
        }
      }),
      { seed },
    );
  });

  test('a front stretcher on top in its middle, hardly beneath; less where it lies high, more where the seat is high', () => {
    const low = of('front-stretcher', { 'stretcher-height': 120, 'seat-height': 430 });
    expect(sum(row(low, 'top'))).toBeGreaterThan(50 * sum(row(low, 'underside')));
    expect(row(low, 'top')[12]).toBeGreaterThan(3 * (row(low, 'top')[0] as number));
    const at = (stretcher: number, seat: number) =>
      of('front-stretcher', { 'stretcher-height': stretcher, 'seat-height': seat }).per100Uses;
    expect(at(300, 430)).toBeLessThan(0.1 * at(120, 430));
    expect(at(120, 480)).toBeGreaterThan(1.3 * at(120, 400));
    expect(of('medial-stretcher').per100Uses).toBeLessThan(0.5 * of('front-stretcher').per100Uses);
  });

  test('arms at their front ends, also beneath; rear feet at their hind edge', () => {
    const arm = of('arm');
    expect(row(arm, 'top')[22]).toBeGreaterThan(2 * (row(arm, 'top')[0] as number));
    expect(row(arm, 'underside')[22]).toBeGreaterThan(10 * (row(arm, 'underside')[4] as number));
    const rear = row(of('rear-foot'), 'underside');
    expect(rear[23]).toBeGreaterThan(rear[0] as number);
  });

  test('runners in front and drawers behind, mirror images of one another', () => {
    const runner = row(of('drawer-runner'), 'top');
    const sides = row(of('drawer'), 'lower edges of the sides');
    expect(runner[0]).toBe(1);
    [...sides].reverse().forEach((each, index) => {
      expect(each).toBeCloseTo(runner[index] as number, 9);
    });
  });

  test('a kind that nobody described is said to be unknown', () => {
    expect(contactsOf([{ part: 'x', kind: 'finial' }], {}).unknown).toEqual(['x']);
  });
});

describe('agreement', () => {
  test('by hand: three worn places among six', () => {
    // Worn 5, 4, 2 against 3, 1, 0: of nine pairs the worn is more touched in eight.
    const held = agreement([5, 4, 2, 3, 1, 0], [1, 1, 0.6, 0, 0.1, 0.4]);
    expect(held?.auc).toBeCloseTo(8 / 9, 12);
  });

  test('counts pairs, ties half; turned about it is its complement; scale does not matter', () => {
    const field = fc.array(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.constantFrom(0, 1)), {
      minLength: 12,
      maxLength: 60,
    });
    fc.assert(
      fc.property(field, (places) => {
        const [touched, worn] = [places.map(([a]) => a), places.map(([, b]) => b as number)];
        const held = agreement(touched, worn);
        const ones = touched.filter((_, at) => worn[at] === 1);
        const zeros = touched.filter((_, at) => worn[at] === 0);
        if (ones.length === 0 || zeros.length === 0) return expect(held).toBeUndefined();
        const pairs = ones.flatMap((one) => zeros.map((zero) => (one > zero ? 1 : one === zero ? 0.5 : 0)));
        const counted = pairs.reduce<number>((total, each) => total + each, 0) / pairs.length;
        expect(held?.auc).toBeCloseTo(counted, 12);
        expect(
          agreement(
            touched.map((each) => -each),
            worn,
          )?.auc,
        ).toBeCloseTo(1 - counted, 12);
        expect(
          agreement(
            touched.map((each) => 7 + 3 * each),
            worn,
          )?.rank,
        ).toBeCloseTo(held?.rank as number, 12);
      }),
      { seed },
    );
  });

  test('Spearman’s example worked by hand: ranks 1 2 3 4 5 against 2 1 4 3 5 give 0.8', () => {
    expect(agreement([1, 2, 3, 4, 5], [0.2, 0.1, 0.7, 0.6, 0.9])?.rank).toBeCloseTo(0.8, 12);
  });

  test('names a face worn beneath and sharp on top', () => {
    const surface = contactsOf([{ part: 'p', kind: 'front-stretcher' }], {}).surfaces[0] as Surface;
    const worn = surface.faces.map((face) =>
      Array.from({ length: 24 }, () => (face === 'underside' ? 0.8 : 0)),
    );
    expect(contraryPlaces(surface, worn)).toEqual([
      { part: 'p', face: 'top', what: 'sharp where much touches' },
      { part: 'p', face: 'underside', what: 'worn where nothing touches' },
    ]);
  });
});
