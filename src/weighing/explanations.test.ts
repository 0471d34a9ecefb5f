import { describe, expect, it } from 'vitest';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { bestDraw } from '../evidence/figures.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import {
  alterationOf,
  handPieces,
  type Made,
  makingSign,
  shopOf,
  signOf,
} from '../evidence/testing/handPieces.ts';
import { finished } from '../ground/steps.ts';
import { evaluate } from '../summation/evaluate.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { explanationsOf, shareIfOwn, shareUnlisted } from './explanations.ts';
import { weighLooks } from './weights.ts';

// Worked by hand from the shares typed here: of 100 pieces so many show a sign.
const intact = 'period-intact';

/** The piece as it stands with these findings, and the first of them with its weight. */
function weighed(made: Made, ...findings: CaseToWeigh['findings']) {
  const ready = prepareCase({ form: 'box', mode: 'in-hand', findings }, handPieces(made), 2026);
  if (!ready.ok) throw new Error(JSON.stringify(ready.faults));
  const evaluation = evaluate(fixModel(layOut(ready.prepared), bestDraw()));
  const weights = finished(weighLooks(evaluation, intact));
  const weight = weights.find(({ look }) => look.sign.id === findings[0]?.sign);
  if (weight === undefined) throw new Error('not weighed');
  return { evaluation, weight };
}
const present = (sign: string, part?: string) =>
  ({ sign, state: 'present', ...(part === undefined ? {} : { part }) }) as const;

describe('the share of a finding with no listed shop', () => {
  // Half of all period work is the shop's: 0.5·0.9 + 0.5·0.02 = 46 in 100 show it, of which 1 in 46 are of no listed shop.
  const made = { signs: [makingSign('joint', 2, 30)], shops: [shopOf('north', 50, { joint: 90 })] };
  const { evaluation, weight } = weighed(made, present('joint'));

  it('is left unsaid only where it can’t be below the bound', () => {
    // That 1 in 46 can't have made it likelier than 46 in 100 · 1 in 46 = 1 in 100.
    expect(shareUnlisted(evaluation, weight, intact, 0.0099)).toBeUndefined();
    expect(shareUnlisted(evaluation, weight, intact, 0.0101)).toBeCloseTo(0.02, 12);
    expect(shareUnlisted(evaluation, weight, intact, 0.5)).toBeCloseTo(0.02, 12);
  });

  it('is no more than all, and the same asked again', () => {
    const usual = weighed(
      { ...made, signs: [makingSign('joint', 100, 30), makingSign('twin', 3, 30)] },
      present('joint'),
      present('twin'),
    );
    const ask = () => shareUnlisted(usual.evaluation, usual.weight, intact, 2);
    const first = ask();
    expect(first).toBeCloseTo(1, 12);
    expect(first).toBeLessThanOrEqual(1);
    expect(ask()).toBe(first);
  });

  it('is left unsaid where all else leaves nothing of work without a listed shop', () => {
    const twin = { ...made, signs: [...made.signs, makingSign('twin', 0, 30)] };
    const only = weighed(
      { ...twin, shops: [shopOf('north', 50, { joint: 90, twin: 80 })] },
      present('joint'),
      present('twin'),
    );
    expect(shareUnlisted(only.evaluation, only.weight, intact, 2)).toBeUndefined();
  });

  it('is left unsaid where the findings leave nothing of period work at all', () => {
    const never = weighed(
      { signs: [makingSign('joint', 30, 30), makingSign('never', 0, 30)] },
      present('joint'),
      present('never'),
    );
    expect(shareUnlisted(never.evaluation, never.weight, intact, 2)).toBeUndefined();
  });
});

describe('the share of a finding if its part is of the making', () => {
  const holes = signOf('holes', 'origin', { 'of-the-making': 3, repair: 60, improve: 8, 'other-old': 20 });
  const nails = signOf('nails', 'origin', { 'of-the-making': 7, repair: 60, improve: 8, 'other-old': 20 });

  it('takes in all else that was found, and not the part’s renewal', () => {
    const { evaluation, weight } = weighed(
      { signs: [holes, nails], renewed: 40 },
      present('holes', 'lid'),
      present('nails', 'lid'),
      present('nails', 'board'),
    );
    expect(shareIfOwn(evaluation, weight, 'period-repaired')).toBeCloseTo(0.03, 12);
  });

  it('is none of what was seen on the whole, nor of a trace of an alteration', () => {
    const whole = weighed({ signs: [{ ...holes, on: ['whole'] }], renewed: 40 }, present('holes'));
    expect(shareIfOwn(whole.evaluation, whole.weight, intact)).toBeUndefined();
    const trace = signOf('trace', 'alteration/waxed', { happened: 60, not: 2 });
    const waxed = weighed(
      { signs: [trace], alterations: [alterationOf('waxed', 'upkeep', 10)], renewed: 40 },
      present('trace', 'lid'),
    );
    expect(shareIfOwn(waxed.evaluation, waxed.weight, intact)).toBeUndefined();
  });

  it('is left unsaid where all else leaves nothing of a part of the making', () => {
    const never = signOf('never', 'origin', { 'of-the-making': 0, repair: 60, improve: 8, 'other-old': 20 });
    const { evaluation, weight } = weighed(
      { signs: [holes, never], renewed: 40 },
      present('holes', 'lid'),
      present('never', 'lid'),
    );
    expect(shareIfOwn(evaluation, weight, 'period-repaired')).toBeUndefined();
  });
});

describe('what explains a finding', () => {
  const joint = makingSign('joint', 2, 30);
  const kinds = (made: Made, share: number, eased: number, explained: boolean) => {
    const { evaluation, weight } = weighed(made, present('joint', 'lid'));
    return explanationsOf(evaluation, weight, share, eased, explained).map(({ kind, id, share: so }) => [
      kind,
      id,
      Math.round(1e6 * so) / 1e4,
    ]);
  };
  const shops = [shopOf('north', 3, { joint: 90 }), shopOf('south', 3, { joint: 12 })];

  it('makes it so many times as probable, and at least 10 in 100', () => {
    // Each later kind shows it on 30 of 100, the shops on 90 and 12, all period work on 0.94·2 + 0.03·102 = 4.94 in 100.
    const later = ['later-bench-copy', 'later-machine-copy', 'made-to-deceive'].map((id) => [
      'reading',
      id,
      30,
    ]);
    const north = ['shop', 'north', 90];
    const of = (share: number, eased: number) => {
      const found = kinds({ signs: [joint], shops }, share, eased, false);
      return [found[0], ...found.slice(1).sort()];
    };
    expect(of(0.04, 2)).toEqual([north, ...later, ['shop', 'south', 12]]);
    expect(of(0.061, 2)).toEqual([north, ...later]);
    expect(of(0.149, 2)).toEqual([north, ...later]);
    expect(of(0.151, 2)).toEqual([north]);
    // What would ease it by nothing at all would be the finding's own share; below 10 in 100 nothing is told.
    expect(of(0.001, 3)).toEqual([north, ...later, ['shop', 'south', 12]]);
  });

  it('is no other reading where something else explains it already', () => {
    expect(kinds({ signs: [joint], shops }, 0.04, 2, true)).toEqual([
      ['shop', 'north', 90],
      ['shop', 'south', 12],
    ]);
  });

  it('is nothing of a shop that can’t have made it, whatever else was found', () => {
    const never = { signs: [joint, makingSign('only', 0, 50)], shops: [shopOf('north', 50, { joint: 90 })] };
    const { evaluation, weight } = weighed(never, present('joint', 'lid'), present('only'));
    expect(explanationsOf(evaluation, weight, 0.02, 3, false).filter(({ kind }) => kind === 'shop')).toEqual(
      [],
    );
  });

  it('is no shop where the finding speaks of what came later, however often its pieces show it', () => {
    // 0.6·0.03 + 0.4·0.6 = 25.8 in 100 of the shop's lids, as of all.
    const holes = signOf('joint', 'origin', { 'of-the-making': 3, repair: 60, improve: 8, 'other-old': 20 });
    const shop = shopOf('north', 50, { joint: 90, usual: 90 });
    const made = { signs: [holes, makingSign('usual', 50, 50)], shops: [shop], renewed: 40 };
    const { evaluation, weight } = weighed(made, present('joint', 'lid'), present('usual'));
    expect(explanationsOf(evaluation, weight, 0.03, 3, true).map(({ kind, id }) => [kind, id])).toEqual([
      ['origin', 'repair'],
    ]);
  });

  it('is the alteration whose trace it is, and no other; of a sign of the making none', () => {
    const trace = signOf('joint', 'alteration/waxed', { happened: 60, not: 2 });
    const alterations = ['cleaned', 'waxed'].map((id) => alterationOf(id, 'upkeep', 10));
    expect(kinds({ signs: [trace], alterations }, 0.02, 3, true)).toEqual([['alteration', 'waxed', 60]]);
    expect(kinds({ signs: [makingSign('joint', 40, 50)], alterations }, 0.02, 3, true)).toEqual([]);
  });
});
