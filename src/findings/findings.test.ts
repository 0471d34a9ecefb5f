import { describe, expect, test } from 'vitest';
import { houseKnowledge } from '../../test/kits/houseKnowledge.ts';
import type { Measurements } from '../knowledge/measurementSchema.ts';
import { findingsFrom } from './findingsFrom.ts';
import type { Measurement } from './measurement.ts';
import { placesOf } from './placesOf.ts';

// The figures are judged, so that only what must hold of them is tested: bounds, direction, and sums worked by hand.

const knowledge = await houseKnowledge();
const figures = knowledge.measurements as Measurements;
const told = (measured: Measurement) => findingsFrom(measured, figures, knowledge.signs);
const first = (measured: Measurement) => told(measured).findings[0]?.likelihoods ?? {};
const ratio = (measured: Measurement, one: string, other: string) => {
  const likelihoods = first(measured);
  return (likelihoods[one] as number) / (likelihoods[other] as number);
};

describe('outlines', () => {
  const machine = (rmsMm: number, noiseMm = 0.2, sigmaMm = 0.04) =>
    ratio({ from: 'photo.twins', rmsMm, noiseMm, sigmaMm }, 'modern-machine', 'hand');

  test('the ratio falls steadily as outlines part, within 1/10 to 10', () => {
    const ratios = Array.from({ length: 60 }, (_, index) => machine(0.1 * index));
    for (const [at, each] of ratios.slice(1).entries())
      expect(each).toBeLessThanOrEqual((ratios[at] as number) + 1e-9);
    expect(Math.max(...ratios)).toBeLessThanOrEqual(10);
    expect(Math.min(...ratios)).toBeGreaterThanOrEqual(0.1);
    expect(ratios[2]).toBeGreaterThan(3);
    expect(ratios[12]).toBeLessThan(0.4);
  });

  test('tracing that is coarser than all of it hardly tells', () => {
    expect(Math.abs(Math.log(machine(1.2, 6, 3)))).toBeLessThan(0.5);
  });
});

test('darkening speaks for age within 1/5 to 5, never against stain, and of other surfaces nothing', () => {
  const asked = (darkerByL: number, sigmaL = 0.5, surface: 'pale-bare' | 'other' = 'pale-bare') =>
    ({ from: 'photo.colour-balance', surface, darkerByL, sigmaL }) as const;
  const aged = (darkerByL: number, sigmaL?: number) => ratio(asked(darkerByL, sigmaL), 'natural', 'none');
  expect(aged(10)).toBeCloseTo(5, 9);
  expect(aged(-4)).toBeCloseTo(0.2, 9);
  for (let darker = -20; darker < 40; darker++) {
    expect(aged(darker + 1)).toBeGreaterThanOrEqual(aged(darker) - 1e-12);
    expect(ratio(asked(darker), 'imitated', 'natural')).toBe(1);
  }
  expect(Math.abs(Math.log(aged(4, 60)))).toBeLessThan(0.05);
  // By hand: at 4, half way between 8 ± 5 and 0 ± 3 with sure measuring: (3/5)·exp(−(16/25 − 16/9)/2) = 1.0598.
  expect(aged(4, 0)).toBeCloseTo(1.0598, 4);
  expect(told(asked(10, 0.5, 'other')).findings).toEqual([]);
});

describe('wear', () => {
  const asked = (auc: number, aucSigma = 0.04) =>
    ({ from: 'wear.contact', worn: 'in-places', auc, aucSigma, isContrary: false }) as const;
  const natural = (auc: number, aucSigma?: number) => ratio(asked(auc, aucSigma), 'natural', 'imitated');

  test('the ratio stays within 1/5 to 5 and rises with agreement', () => {
    const ratios = Array.from({ length: 21 }, (_, index) => natural(index / 20));
    expect(Math.max(...ratios)).toBeLessThanOrEqual(5);
    expect(Math.min(...ratios)).toBeGreaterThanOrEqual(0.2 - 1e-12);
    expect(natural(0.95)).toBeGreaterThan(2);
    expect(natural(0.5)).toBeLessThan(0.5);
    expect(natural(0.1)).toBeCloseTo(0.2, 9);
    expect(Math.abs(Math.log(natural(0.9, 3)))).toBeLessThan(0.2);
  });

  test('no wear speaks for none, wear everywhere alike for an imitation', () => {
    const even = { ...asked(0.5), auc: null, aucSigma: null };
    expect(first({ ...even, worn: 'nowhere' })).toEqual({ natural: 0.2, none: 1, imitated: 0.2 });
    expect(first({ ...even, worn: 'everywhere' })).toEqual({ natural: 0.2, none: 0.2, imitated: 1 });
  });

  test('only signs the painted parts can show are named, and those of the whole first where it goes against use', () => {
    const signs = (more: object) =>
      told({ ...asked(0.9), kinds: ['front-stretcher'], ...more }).findings.map(({ sign }) => sign);
    expect(signs({})).toEqual([
      'front-stretcher-top-worn',
      'wear-where-no-one-touches',
      'distress-even-all-over',
    ]);
    expect(signs({ isContrary: true })[0]).toBe('wear-where-no-one-touches');
  });
});

describe('tool marks', () => {
  const even = { 'hand-planed': 1, 'rotary-planer': 1, 'straight-saw': 1, 'circular-saw': 1, 'band-saw': 1, sliced: 1 }; // biome-ignore format: a row
  const marks = (likelihoods: typeof even) => told({ from: 'photo.toolmarks', likelihoods }).findings;

  test('a kind ten times as probable as the others speaks ten to one for its sign, and against the others', () => {
    const found = marks({ ...even, 'circular-saw': 10 });
    const of = (sign: string) => {
      const { present = 0, absent = 0 } = found.find((each) => each.sign === sign)?.likelihoods ?? {};
      return present / absent;
    };
    expect(found[0]).toMatchObject({ sign: 'saw-arcs-circular', state: 'present' });
    expect(of('saw-arcs-circular')).toBeCloseTo(10, 12);
    // 1 against the mean of 10, 1, 1, 1, 1: 14 / 5
    expect(of('planer-ripple')).toBeCloseTo(5 / 14, 12);
    // the mean of circular and band, 5.5, against 1
    expect(of('veneer-sawn-by-machine')).toBeCloseTo(5.5, 12);
    expect(found.at(-1)?.state).toBe('absent');
  });

  test('kinds alike tell nothing, and a pit saw is not told from a mill’s', () => {
    expect(marks(even)).toEqual([]);
    const [pit, sash] = marks({ ...even, 'straight-saw': 8 });
    expect([pit?.besides, sash?.besides].join()).toMatch(/pit saw.*mill’s sash saw/);
  });
});

test('grain that goes on speaks for the sign of one piece and against those of two', () => {
  // By the words of each sign: grain that comes out below the cuff is one stick; grain that breaks off at a line is two.
  const grain = (across: 'cuff' | 'leg' | 'veneer' | 'other', likelihoodRatio: number, tells = true) =>
    told({ from: 'photo.grain-match', across, tells, likelihoodRatio }).findings[0];
  expect(grain('cuff', 20)).toMatchObject({ state: 'present', likelihoods: { present: 1, absent: 1 / 20 } });
  expect(grain('leg', 20)).toMatchObject({ state: 'absent', likelihoods: { present: 1 / 20, absent: 1 } });
  expect(grain('leg', 1 / 20)?.likelihoods).toEqual({ present: 1, absent: 1 / 20 });
  expect(grain('veneer', 0.1)?.likelihoods.present).toBe(1);
  expect(grain('other', 20)).toBeUndefined();
  expect(grain('cuff', 20, false)).toBeUndefined();
});

test('shrinkage speaks for old wood, and alike against fresh and imitated', () => {
  const round = first({ from: 'wood.roundness', part: 'turning', likelihoodRatio: 14 });
  expect(round).toEqual({ natural: 14, none: 1, imitated: 1 });
  const panel = (part: 'panel' | 'board', likelihoodRatio: number | null) =>
    told({ from: 'wood.panel-loss', part, likelihoodRatio }).findings.map(({ sign }) => sign);
  expect(panel('panel', 3)).toEqual(['panel-shrunk-in-frame']);
  expect(panel('panel', null)).toEqual([]);
  expect(panel('board', 3)).toEqual([]);
});

test('a seat one inch wider tells neither way, and 1.96 standard deviations off are one in forty', () => {
  // Tables of the normal distribution: 0.025 lies beyond 1.96 standard deviations.
  const narrow = (differenceMm: number) =>
    first({ from: 'sets.likeness', differenceMm, sigmaMm: 1, handMm: 0 }).present;
  expect(narrow(25.4)).toBeCloseTo(0.5, 6);
  expect(narrow(25.4 + 1.96)).toBeCloseTo(0.025, 4);
  expect(narrow(-60)).toBeCloseTo(0.999, 12);
  const asked = { from: 'sets.likeness', differenceMm: 5, sigmaMm: 1, handMm: 3 } as const;
  const on = (alterations: string[]) =>
    findingsFrom(asked, figures, knowledge.signs, { alterations }).findings;
  expect(on(['arms-added'])).toHaveLength(1);
  expect(on([])).toEqual([]);
});

describe('where they can be entered', () => {
  const parts = [
    { id: 'leg', kind: 'leg' },
    { id: 'stretcher', kind: 'front-stretcher' },
  ];

  test('on the whole and on every part that can show the sign', () => {
    const findings = [{ sign: 'front-stretcher-top-worn' }, { sign: 'twins-from-a-pattern' }];
    expect(
      placesOf(findings, knowledge.signs, parts).map(({ finding, part }) => [finding.sign, part]),
    ).toEqual([
      ['front-stretcher-top-worn', 'stretcher'],
      ['twins-from-a-pattern', undefined],
    ]);
  });
});

test('every measurement says on whose word its likelihoods stand, and the figures of judgment say so', () => {
  for (const each of Object.values(figures)) expect(each.basis.why).toMatch(/\.$/);
  expect(told({ from: 'photo.twins', rmsMm: 1, noiseMm: 0.2, sigmaMm: 0.1 })).toMatchObject({
    basis: { by: 'judgement' },
    mostRatio: 10,
  });
  expect(told({ from: 'wood.roundness', part: 'top', likelihoodRatio: 2 }).mostRatio).toBeNull();
});
