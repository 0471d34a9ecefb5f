import { expect, test } from 'vitest';
import { labOfRgb, rgbOfHex } from '../../../photo/colour/colourSpace.ts';
import { rgbOfLab } from './rgbOfLab.ts';

test.each([
  ['#8b5a2b', 'rgb(139 90 43)'],
  ['#ffffff', 'rgb(255 255 255)'],
  ['#000000', 'rgb(0 0 0)'],
  ['#3f6596', 'rgb(63 101 150)'],
])('%s goes to CIELAB and back', (hex, shown) => {
  expect(rgbOfLab(labOfRgb(rgbOfHex(hex)))).toBe(shown);
});
