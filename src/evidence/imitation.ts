import { sum } from '../ground/statistics.ts';
import type { Sign } from '../knowledge/schema.ts';
import { isClaimed } from './claimedShop.ts';
import type { Draw } from './figures.ts';
import type { PreparedCase } from './preparedCase.ts';
import type { Making } from './worlds.ts';

/** The makings that may be after work of a known place: a factory copies a style, not a shop. */
const imitators = ['bench-copy', 'to-deceive'] as const satisfies readonly Making[];
type Imitator = (typeof imitators)[number];

/** True of a making that may imitate a shop. */
export function imitates(making: Making): making is Imitator {
  return (imitators as readonly Making[]).includes(making);
}

/**
 * How probable it is that a copy or a fake was made after the work of each shop: index 0 is "none of them", then the shops in order.
 * Who copies or fakes the work of a known place claims that place, so only shops of the claimed place are imitated.
 */
export function imitationPriors(prepared: PreparedCase, draw: Draw, making: Imitator): number[] {
  const { shops, place, knowledge } = prepared;
  const weights = shops.map((shop) => (isClaimed(shop, place) ? draw(shop.share) : 0));
  const total = sum(weights);
  if (total === 0) return [1, ...weights];
  const imitated = draw(knowledge.making.imitation[making]);
  return [1 - imitated, ...weights.map((each) => (imitated * each) / total)];
}

/** How much of a shop's habit an imitator takes over: most of what shows, little of what a buyer never sees. */
export function takenOver({ needs }: Sign, making: Making, { knowledge }: PreparedCase, draw: Draw): number {
  if (making === 'period') return 1;
  if (!imitates(making)) return 0;
  const { shown, hidden } = knowledge.making.imitation;
  return draw(needs === 'nothing' ? shown : hidden);
}
