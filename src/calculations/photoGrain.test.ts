import { describe, expect, test } from 'vitest';
import { grainPair } from '../../test/kits/surfaces/grainPairs.ts';
import type { Picture } from '../photo/picture.ts';
import type { CalculationContext } from './define.ts';
import { photoGrain } from './photoGrain.ts';
import { photoGrainMatch } from './photoGrainMatch.ts';
import { runById } from './runById.ts';
import { noKnowledge } from './testing/outputOf.ts';

const { picture, a, b, directionDeg } = grainPair('straight', true, 3_100_000).rendered;

function context(of: Picture = picture): CalculationContext {
  return { ...noKnowledge, pictures: new Map([['board.png', of]]) };
}

function asked(more: object = {}) {
  return { file: 'board.png', a, b, directionDeg, ...more };
}

function answered(more: object = {}) {
  const result = runById('photo.grain-match', asked(more), context());
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return photoGrainMatch.output.parse(result.output);
}

function faultsOf(id: string, input: unknown, of?: Picture) {
  const result = runById(id, input, context(of));
  return result.ok ? [] : result.faults.map(({ code, path }) => `${code} ${path}`);
}

describe('photo.grain', () => {
  test('tells an upright grain, clockwise from level, and that across it', () => {
    const result = runById('photo.grain', { file: 'board.png', region: a }, context());
    if (!result.ok) throw new Error(JSON.stringify(result.faults));
    const found = photoGrain.output.parse(result.output);
    expect(found.tells).toBe(true);
    expect(Math.abs(found.orientationDeg)).toBeGreaterThan(84);
    expect(Math.abs(Math.abs(found.orientationDeg - found.acrossDeg) - 90)).toBeLessThan(1e-9);
    expect(found.says).toMatch(/^The grain runs \d+\.\d° off the level/);
    expect(found.map.cells).toHaveLength(found.map.columns * found.map.rows);
  });

  test('a gray wall has no grain, and says so', () => {
    const wall: Picture = { widthPx: 80, heightPx: 60, channels: 1, pixels: new Uint8Array(4800).fill(130) };
    const result = runById('photo.grain', { file: 'board.png' }, context(wall));
    if (!result.ok) throw new Error(JSON.stringify(result.faults));
    expect(photoGrain.output.parse(result.output)).toMatchObject({
      tells: false,
      coherence: 0,
      says: expect.stringMatching(/^Cannot tell: /),
    });
  });

  test('faults name the field', () => {
    expect(faultsOf('photo.grain', { file: 'other.png' })).toEqual(['photo.not-there file']);
    expect(faultsOf('photo.grain', { file: 'board.png', region: { ...a, x: 100_000 } })).toEqual([
      'photo.region-outside region',
    ]);
    expect(faultsOf('photo.grain', { file: 'board.png', region: { ...a, widthPx: 9 } })).toEqual([
      'photo.region-too-small region',
    ]);
    const tiny: Picture = { widthPx: 8, heightPx: 8, channels: 1, pixels: new Uint8Array(64) };
    expect(faultsOf('photo.grain', { file: 'board.png' }, tiny)).toEqual(['photo.region-too-small file']);
  });
});

describe('photo.grain-match', () => {
  test('a rendered board of one piece: above one, held, with both nulls told', () => {
    const found = answered({ mmPerPx: 0.5 });
    expect(found.tells).toBe(true);
    expect(found.likelihoodRatio).toBeGreaterThan(10);
    expect(found.likelihoodRatio).toBeLessThanOrEqual(found.highest);
    expect(found.decibans).toBeCloseTo(10 * Math.log10(found.likelihoodRatio), 9);
    expect(found.shiftMm).toBeCloseTo(found.shiftPx / 2, 9);
    expect(Math.abs(found.shiftPx)).toBeLessThan(3 * found.shiftSigmaPx);
    expect(found.null.how).toContain(`${found.null.photoStrips} searches`);
    expect(found.says).toMatch(/support for one piece rather than two pieces/);
  });

  test('the same regions as corners, or named the other way round, give the same', () => {
    const corners = ({ x, y, widthPx, heightPx }: typeof a) => ({
      points: [
        [x, y],
        [x + widthPx, y],
        [x + widthPx, y + heightPx],
        [x, y + heightPx],
      ],
    });
    const found = answered();
    expect(answered({ a: corners(a), b: corners(b) })).toEqual(found);
    const swapped = answered({ a: b, b: a });
    expect(swapped.likelihoodRatio).toBe(found.likelihoodRatio);
    expect(swapped.shiftPx).toBeCloseTo(-found.shiftPx, 12);
    expect(swapped.a).toEqual(found.b);
  });

  test('each side’s grain direction is that of photo.grain within two degrees', () => {
    const result = runById('photo.grain', { file: 'board.png', region: a }, context());
    if (!result.ok) throw new Error(JSON.stringify(result.faults));
    const apart = photoGrain.output.parse(result.output).orientationDeg - answered().a.grainDeg;
    expect(Math.abs(apart - 180 * Math.round(apart / 180))).toBeLessThan(2);
  });

  test('paint, where the examiner says so, gives no ratio', () => {
    const found = answered({ painted: true });
    expect(found).toMatchObject({ tells: false, likelihoodRatio: 1, decibans: 0 });
    expect(found.says).toMatch(/^Cannot tell: paint/);
  });

  test('faults name the field and the mend', () => {
    expect(faultsOf('photo.grain-match', asked({ b: a }))).toEqual(['photo.strips-overlap-along b']);
    expect(faultsOf('photo.grain-match', asked({ directionDeg: directionDeg + 90 }))).toEqual([
      'photo.strips-no-overlap-across b',
    ]);
    expect(faultsOf('photo.grain-match', asked({ a: { ...a, heightPx: 3 } }))).toEqual([
      'photo.strips-too-small a',
    ]);
    expect(
      faultsOf(
        'photo.grain-match',
        asked({
          a: {
            points: [
              [0, 0],
              [9, 9],
            ],
          },
        }),
      ),
    ).toEqual(['input.wrong-value a.points']);
    expect(faultsOf('photo.grain-match', asked({ b: { ...b, y: 100_000 } }))).toEqual([
      'photo.region-outside b',
    ]);
  });
});
