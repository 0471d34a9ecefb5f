import { describe, expect, test } from 'vitest';
import { drawerSide, drawerSideColours } from '../../scripts/drawnPictures.ts';
import reference from '../../test/reference/colour.json' with { type: 'json' };
import { colourDifference } from '../photo/colour/colourDifference.ts';
import { type Lab, labOfRgb, rgbOfHex } from '../photo/colour/colourSpace.ts';
import { photoColourDifference } from './photoColour.ts';
import { photoColourBalance } from './photoColourBalance.ts';
import { runById } from './runById.ts';
import { noKnowledge, outputOf } from './testing/outputOf.ts';

// Values and their sources: test/reference/colour.json.

const example = photoColourBalance.example as {
  file: string;
  patches: unknown[];
  samples: unknown[];
};
const context = { ...noKnowledge, pictures: new Map([[example.file, drawerSide()]]) };

describe('values from outside', () => {
  const lab = ([L, a, b]: number[]) => ({ L, a, b });
  test.each(reference.differences)('$id', (pair) => {
    const found = outputOf(photoColourDifference, { a: lab(pair.a), b: lab(pair.b) });
    expect(Math.abs(found.deltaE2000 - pair.deltaE2000)).toBeLessThan(pair.tolerance);
    if ('deltaE76' in pair) expect(Math.abs(found.deltaE76 - (pair.deltaE76 as number))).toBeLessThan(1e-8);
  });

  test('a color of the screen is the Lab it stands for, under either white', () => {
    for (const { srgb8, lab_d65, lab_d50 } of reference.screenColours) {
      const a = `#${srgb8.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
      const { deltaE2000 } = outputOf(photoColourDifference, { a, b: lab(lab_d65) });
      expect(deltaE2000).toBeLessThan(1e-3);
      expect(outputOf(photoColourDifference, { a, b: lab(lab_d50), white: 'D50' }).deltaE2000).toBeLessThan(
        1e-3,
      );
    }
  });
});

describe('photo.colour-balance', () => {
  test('finds the colors that were drawn, though the light was yellow and stray', () => {
    const { samples, residuals, comparison } = outputOf(photoColourBalance, example, context);
    expect(Math.max(...residuals)).toBeLessThan(0.6);
    for (const { id, lab } of samples) {
      const drawn = labOfRgb(rgbOfHex(drawerSideColours[id as 'outside' | 'inside']));
      expect(colourDifference(lab, drawn)).toBeLessThan(0.6);
    }
    const drawn = colourDifference(
      labOfRgb(rgbOfHex(drawerSideColours.outside)),
      labOfRgb(rgbOfHex(drawerSideColours.inside)),
    );
    if (comparison === null) throw new Error('not compared');
    expect(Math.abs(comparison.deltaE2000 - drawn)).toBeLessThan(0.3 + 3 * comparison.sigma);
    expect(comparison.sigmaL).toBeGreaterThan(0);
    expect(comparison.sigmaL).toBeLessThan(0.5);
  });

  test('without the card the colors are off by far more', () => {
    const { samples, notes } = outputOf(photoColourBalance, { ...example, patches: [] }, context);
    const drawn = labOfRgb(rgbOfHex(drawerSideColours.outside));
    expect(colourDifference(samples[0]?.lab as Lab, drawn)).toBeGreaterThan(3);
    expect(notes.join(' ')).toContain('camera’s colors');
  });

  test('other surfaces are described only', () => {
    const { notes } = outputOf(photoColourBalance, { ...example, surface: 'other' }, context);
    expect(notes.join(' ')).toContain('described only');
  });
});

describe('bad input gives one plain sentence that says what to do', () => {
  const region = { x: 0, y: 0, widthPx: 40, heightPx: 40 };
  test.each<[string, object, string, string]>([
    ['photo.colour-difference', { a: '#12345', b: '#123456' }, 'a', 'written as #9a7b4f'],
    [
      'photo.colour-difference',
      { a: '#123456', b: '#123456', sigmaA: { L: -1, a: 0, b: 0 } },
      'sigmaA',
      'below 0',
    ],
    ['photo.colour-balance', { ...example, file: 'none.png' }, 'file', 'name a file'],
    [
      'photo.colour-balance',
      { ...example, samples: [{ id: 'a', region: { ...region, x: 300 } }], compare: undefined },
      'samples[0].region',
      'draw it within',
    ],
    [
      'photo.colour-balance',
      { ...example, samples: [{ id: 'a', region: { ...region, widthPx: 3 } }], compare: undefined },
      'samples[0].region',
      'at least 6',
    ],
    [
      'photo.colour-balance',
      { ...example, compare: { exposed: 'outside', protected: 'top' } },
      'compare.protected',
      'name one of outside, inside',
    ],
  ])('%s %o', (id, input, path, words) => {
    // biome-ignore format: a table
    const result = runById(id, input, context);
    if (result.ok) throw new Error('no fault');
    expect(result.faults).toHaveLength(1);
    expect(result.faults[0]?.path).toBe(path);
    expect(result.faults[0]?.message).toContain(words);
  });
});
