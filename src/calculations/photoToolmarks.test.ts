import { describe, expect, test } from 'vitest';
import { renderMarks } from '../../test/kits/surfaces/renderMarks.ts';
import reference from '../../test/reference/profiles.json' with { type: 'json' };
import type { Picture } from '../photo/picture.ts';
import { photoToolmarks } from './photoToolmarks.ts';
import { runById } from './runById.ts';
import { noKnowledge, outputOf } from './testing/outputOf.ts';

const drawn = renderMarks('circular-saw', 31);
const even = evenWaves();
const context = {
  ...noKnowledge,
  pictures: new Map([
    ['sawn.png', drawn.picture],
    ['waves.png', even],
  ]),
};

/** A board whose lightness follows the published wave along its length, row by row. */
function evenWaves(): Picture {
  const { profile } = reference.profiles[0] as { profile: number[] };
  const pixels = new Uint8Array(profile.length * 200);
  for (let at = 0; at < pixels.length; at++) pixels[at] = 128 + 40 * (profile[at % profile.length] as number);
  return { widthPx: profile.length, heightPx: 200, channels: 1, pixels };
}

/** What was told of marks that have both a pitch and a radius, or NaN. */
function marks(input: object) {
  const {
    pitchMm = Number.NaN,
    pitchSigmaMm = 0,
    arcRadiusMm = Number.NaN,
    arcSigmaMm = 0,
    ...rest
  } = outputOf(photoToolmarks, input, context);
  return { pitchMm, pitchSigmaMm, arcRadiusMm, arcSigmaMm, ...rest };
}

test('a wave from outside has its period', () => {
  const known = reference.profiles[0] as (typeof reference.profiles)[number];
  const found = marks({ file: 'waves.png', mmPerPx: known.stepMm });
  expect(Math.abs(found.pitchMm - known.truePeriodMm)).toBeLessThan(known.periodToleranceMm);
  expect(found.arcRadiusMm).toBeNaN();
});

test('a sawn board of known truth: arcs of its radius, and what is said of them', () => {
  const found = marks({ file: 'sawn.png', mmPerPx: drawn.mmPerPx, directionDeg: drawn.directionDeg });
  expect(found.kind).toBe('circular-saw');
  expect(found.likelihoods['circular-saw']).toBe(1);
  expect(Math.abs(found.arcRadiusMm - (drawn.truth.radiusMm as number))).toBeLessThan(3 * found.arcSigmaMm);
  expect(Math.abs(found.pitchMm - (drawn.truth.pitchMm as number))).toBeLessThan(3 * found.pitchSigmaMm);
  expect(found.says).toContain('drawn surfaces only, and so it weighs at most 8 to 1');
});

test('twice the scale is twice the pitch and the radius', () => {
  const at = (by: number) => marks({ file: 'sawn.png', mmPerPx: by * 0.1, directionDeg: drawn.directionDeg });
  expect(at(2).arcRadiusMm / at(1).arcRadiusMm).toBeCloseTo(2, 1);
});

describe('bad input gives one plain sentence that says what to do', () => {
  const whole = { file: 'sawn.png', mmPerPx: 0.2 };
  test.each<[string, object, string, string]>([
    ['no picture', { ...whole, file: 'gone.png' }, 'file', 'name a file'],
    [
      'outside',
      { ...whole, region: { x: 400, y: 0, widthPx: 200, heightPx: 200 } },
      'region',
      'draw it within',
    ],
    ['small', { ...whole, region: { x: 0, y: 0, widthPx: 50, heightPx: 50 } }, 'region', 'at least 60'],
    ['no scale', { ...whole, mmPerPx: 0 }, 'mmPerPx', 'above 0'],
    ['coarse', { ...whole, mmPerPx: 0.8 }, 'mmPerPx', 'from nearer by'],
    ['tiny', { ...whole, mmPerPx: 0.01 }, 'mmPerPx', 'mend the scale'],
  ])('%s', (_, input, path, words) => {
    // biome-ignore format: a table
    const result = runById('photo.toolmarks', input, context);
    if (result.ok) throw new Error('no fault');
    expect(result.faults).toHaveLength(1);
    expect(result.faults[0]?.path).toBe(path);
    expect(result.faults[0]?.message).toContain(words);
  });
});
