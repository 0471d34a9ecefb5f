import { describe, expect, it } from 'vitest';
import type { Findings } from '../benchContext.ts';
import { heatOf } from './heatOf.ts';
import {
  facesLeft,
  nextStroke,
  type PaintedRows,
  painted,
  paintedFace,
  unpainted,
  wornOf,
} from './painting.ts';
import { contraryPainted, oftenLevel, type WearScore, type WearSurface, wearWords } from './wearWords.ts';

const stretcher: WearSurface = {
  part: 'front-stretcher',
  kind: 'front-stretcher',
  surface: 0,
  by: 'shoes',
  along: { from: 'left', to: 'right', lengthMm: 400 },
  faces: ['top', 'underside'],
  per100Uses: 50,
  grid: [Array.from({ length: 24 }, (_, at) => (at < 12 ? 1 : 0)), Array.from({ length: 24 }, () => 0.01)],
};

describe('painting wear', () => {
  it('counts a surface only once every face was looked at', () => {
    const half = paintedFace(unpainted(stretcher), 0, 'light');
    expect(facesLeft(stretcher, half)).toEqual(['underside']);
    expect(wornOf({ 'front-stretcher 0': half }, [stretcher])).toEqual([]);
    const whole = paintedFace(half, 1, 'sharp');
    const [worn] = wornOf({ 'front-stretcher 0': whole }, [stretcher]);
    expect(worn?.grid.map((row) => row.length)).toEqual([24, 24]);
    expect(worn?.grid.map(([first]) => first)).toEqual([0.5, 0]);
  });

  it('tells no wear from a sharp edge only beside wear, and takes bare places of a face looked at as no wear', () => {
    const none = [0, 1].reduce<PaintedRows>(
      (rows, face) => painted(rows, face, 3, 'none'),
      unpainted(stretcher),
    );
    const grid = (rows: PaintedRows) => wornOf({ 'front-stretcher 0': rows }, [stretcher])[0]?.grid.flat();
    expect(new Set(grid(none))).toEqual(new Set([0]));
    expect(new Set(grid(painted(none, 0, 5, 'heavy')))).toEqual(new Set([0.2, 1]));
  });

  it('turns through all strokes and back to bare', () => {
    const turned = [null, 'none', 'light', 'heavy', 'sharp'] as const;
    turned.forEach((stroke, at) => {
      expect(nextStroke(stroke)).toBe(turned[(at + 1) % turned.length]);
    });
  });
});

const speaking = (likelihoods: Record<string, number>): Findings => ({
  findings: [{ sign: 'arm-ends-worn', name: 'Arm ends worn', state: 'present', likelihoods }],
  places: [],
  basis: { by: 'judgement', why: 'Told by a test.' },
  mostRatio: 5,
});

describe('wear in words', () => {
  const score: WearScore = {
    auc: 0.9,
    aucSigma: 0.05,
    rank: 0.7,
    rankSigma: 0.1,
    worn: 'in-places',
    contrary: [],
  };

  it('says that it lies where use puts it, with its doubt, and how far that tells', () => {
    const said = wearWords(score, [], (part) => part, speaking({ natural: 1, none: 0.2, imitated: 0.25 }));
    expect(said).toMatch(/^The wear lies where use would put it: .* in 90, give or take 10;/);
    expect(said).toContain('4 times as probable of wear come with time and use as of wear put on');
  });

  it('names faces that go against use, and that they are as telling as no wear', () => {
    const contrary = [
      { part: 'front-stretcher', face: 'underside', what: 'worn where nothing touches' as const },
      { part: 'front-stretcher', face: 'top', what: 'sharp where much touches' as const },
    ];
    const rows = paintedFace(paintedFace(unpainted(stretcher), 0, 'sharp'), 1, 'heavy');
    expect(contraryPainted(contrary, { 'front-stretcher 0': rows }, [stretcher])).toEqual(contrary);
    const bare = paintedFace(rows, 0, 'none');
    expect(contraryPainted(contrary, { 'front-stretcher 0': bare }, [stretcher])).toEqual([contrary[0]]);
    const said = wearWords({ ...score, auc: 0.1 }, contrary, () => 'Front stretcher', undefined);
    expect(said).toContain('The wear lies where use would not put it');
    expect(said).toContain('Front stretcher, underside: worn where nothing touches.');
    expect(said).toContain('as telling as no wear');
  });

  it('says of a piece with no wear that nothing is worn', () => {
    const bare: WearScore = { ...score, auc: null, aucSigma: null, worn: 'nowhere' };
    const none = speaking({ natural: 0.2, none: 1, imitated: 0.2 });
    expect(wearWords(bare, [], String, none)).toMatch(/^Nothing is worn.*5 times as probable of no use/);
  });

  it('has four levels of touching', () => {
    expect([0, 5, 20, 60].map(oftenLevel)).toEqual([1, 2, 3, 4]);
  });
});

describe('heat over the drawing', () => {
  it('lies along x from the front, a sitter’s left at the right, and as a mean from the side', () => {
    const front = heatOf([stretcher], 'front', true);
    expect(front?.axis).toBe('x');
    expect([front?.shares[0], front?.shares[23]]).toEqual([0, 0.5]);
    expect(heatOf([stretcher], 'front', false)?.shares[0]).toBe(0.5);
    expect(heatOf([stretcher], 'side', true)?.shares).toEqual([0.25]);
    expect(heatOf([stretcher], 'underside', true)?.shares.at(0)).toBeCloseTo(0.005);
    expect(heatOf([], 'front', true)).toBe(undefined);
  });

  it('shows what lies across the view before what runs away from the eye, however much that is touched', () => {
    const side = { ...stretcher, along: { from: 'front', to: 'back', lengthMm: 400 }, per100Uses: 100 };
    expect(heatOf([side, stretcher], 'front', false)?.shares).toHaveLength(24);
    expect(heatOf([side, stretcher], 'side', false)).toMatchObject({ axis: 'x' });
    expect(heatOf([side, stretcher], 'side', false)?.shares[23]).toBe(1);
  });
});
