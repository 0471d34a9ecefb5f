import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edgesSeeThrough } from '../../../calculations/seeThrough.ts';
import { outputOf } from '../../../calculations/testing/outputOf.ts';
import { sightOf, woodOf } from './edgeSection.ts';
import { edgeWords, openAt, seenWords } from './edgeWords.ts';

const section = { openingWidthMm: 22, thicknessMm: 12, chamferDepthMm: 8, chamferWidthMm: 7 };
const reckon = (input: object) => outputOf(edgesSeeThrough, { ...input, stepDeg: 1 });

describe('the drawn section', () => {
  it('lets as much sight through as the calculation says, at every angle', () => {
    const { curve } = reckon(section);
    for (const { angleDeg, chamfered } of curve) {
      const band = sightOf(section, angleDeg, 10);
      const share = band === undefined ? 0 : ((band[1]?.[0] ?? 0) - (band[0]?.[0] ?? 0)) / 22;
      expect(share, `${angleDeg}°`).toBeCloseTo(chamfered, 9);
    }
  });

  it('draws no sight through the wood', () => {
    const cross = (a: readonly number[], b: readonly number[], p: readonly number[]) =>
      ((b[0] ?? 0) - (a[0] ?? 0)) * ((p[1] ?? 0) - (a[1] ?? 0)) -
      ((b[1] ?? 0) - (a[1] ?? 0)) * ((p[0] ?? 0) - (a[0] ?? 0));
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 80 }), (angle) => {
        const band = sightOf(section, angle, 10);
        if (band === undefined) return;
        const [a, b, c, d] = [0, 1, 2, 3].map((corner) => band[corner] ?? []);
        if (a === undefined || b === undefined || c === undefined || d === undefined) return;
        for (const corner of woodOf(section, 30).right.slice(1, 4))
          expect(cross(b, c, corner)).toBeLessThan(1e-9);
        for (const corner of woodOf(section, 30).left.slice(1, 4))
          expect(cross(a, d, corner)).toBeGreaterThan(-1e-9);
      }),
      { seed: 1790 },
    );
  });
});

describe('see-through edges in words', () => {
  it('says where it closes and from where the slope shows', () => {
    const found = reckon(section);
    // Plane geometry: a square edge 12 mm thick closes a 22 mm opening at arctan(22/12) = 61.4°.
    expect(edgeWords(found, true)).toMatch(
      /^With square edges it closes at 61° .* The slope shows from \d+° on/,
    );
    expect(edgeWords(found, false)).toBe('With square edges it closes at 61° off the square of the face.');
  });

  it('says what is seen at an angle, and nothing beyond the end', () => {
    const { curve } = reckon(section);
    expect(seenWords(curve, 0, true)).toContain('100 in 100 of the opening');
    expect(seenWords(curve, 64, true)).toContain('nothing of the opening is seen through with square edges');
    expect(openAt(curve, 89)).toEqual({ square: 0, chamfered: 0 });
  });
});
