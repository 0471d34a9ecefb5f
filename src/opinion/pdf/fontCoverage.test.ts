import { expect, it } from 'vitest';
import { fontCoverage } from './fontCoverage.ts';
import { readFonts } from './fonts.ts';

it('knows which signs every face has', async () => {
  const covers = (await readFonts()).map(fontCoverage);
  expect(covers).toHaveLength(7);
  for (const cover of covers) {
    for (const sign of 'Az09½⅛⅜⅝⅞×±–—“”’…−é')
      expect([sign, cover(sign.codePointAt(0) ?? 0)]).toEqual([sign, true]);
    for (const codePoint of [0x0378, 0x4e2d, 0x1f600, 0x10ffff]) expect(cover(codePoint)).toBe(false);
  }
});
