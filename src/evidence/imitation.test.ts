import { expect, it } from 'vitest';
import { isClaimed } from './claimedShop.ts';
import { bestDraw } from './figures.ts';
import { imitates, imitationPriors, takenOver } from './imitation.ts';
import { prepareCase } from './prepareCase.ts';
import { smallKnowledge } from './testing/smallKnowledge.ts';

const knowledge = smallKnowledge();
function claimed(place: string, more: typeof knowledge.shops = {}) {
  const known = { ...knowledge, shops: { ...knowledge.shops, ...more } };
  const ready = prepareCase({ form: 'bench', mode: 'in-hand', findings: [], claim: { place } }, known, 2026);
  if (!ready.ok) throw new Error('the case was refused');
  return ready.prepared;
}
const north = knowledge.shops.north as (typeof knowledge.shops)[string];

it('knows a shop of the claimed place by any of its whole words, however written', () => {
  const shop = { ...north, placeWords: ['Northam', 'North Riding'] };
  for (const place of ['Northam', 'of northam, on the river', 'NORTH  RIDING', 'North-Riding'])
    expect(isClaimed(shop, place)).toBe(true);
  for (const place of ['', 'Northampton', 'Riding North', 'Southam'])
    expect(isClaimed(shop, place)).toBe(false);
});

// By hand: 45 in a hundred bench copies and 70 fakes are after the claimed place, its shops by their shares 5 and 15.
it('shares those made after the claimed place among its shops', () => {
  const twin = { ...north, id: 'twin', share: { in100: '15, 10–20' } };
  const prepared = claimed('Northam', { twin });
  const of = (making: 'bench-copy' | 'to-deceive') =>
    Object.fromEntries(
      imitationPriors(prepared, bestDraw(), making).map((each, s) => [
        prepared.shops[s - 1]?.id ?? 'none',
        each,
      ]),
    );
  for (const [making, after] of [
    ['bench-copy', 0.45],
    ['to-deceive', 0.7],
  ] as const) {
    expect(of(making).none).toBeCloseTo(1 - after, 12);
    expect(of(making).north).toBeCloseTo(after / 4, 12);
    expect(of(making).twin).toBeCloseTo((3 * after) / 4, 12);
    expect(of(making).south).toBe(0);
  }
});

it('lets nobody’s work be imitated where no known place is claimed', () => {
  for (const place of ['', 'Elsewhere'])
    expect(imitationPriors(claimed(place), bestDraw(), 'to-deceive')).toEqual([1, 0, 0]);
});

it('takes over most of what shows and little of what does not; a factory nothing, the shop itself all', () => {
  const [shown, hidden] = [
    knowledge.signs.centred,
    knowledge.signs['odd-joint'],
  ] as (typeof knowledge.signs)[string][];
  const taken = (sign: typeof shown, making: Parameters<typeof takenOver>[1]) =>
    takenOver(sign as NonNullable<typeof sign>, making, claimed('Northam'), bestDraw());
  expect([taken(shown, 'to-deceive'), taken(hidden, 'to-deceive')]).toEqual([0.7, 0.15]);
  expect([taken(shown, 'bench-copy'), taken(hidden, 'bench-copy')]).toEqual([0.7, 0.15]);
  expect([taken(shown, 'machine-copy'), taken(shown, 'period')]).toEqual([0, 1]);
  expect(imitates('machine-copy')).toBe(false);
});
