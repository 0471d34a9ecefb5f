import type { Figure } from '../knowledge/figureSchema.ts';
import type { PreparedCase } from './preparedCase.ts';

/**
 * Every figure that the weighing of a case can ask for, each once, in an order that the case alone settles: so a seed gives
 * the same redraws however the sums are made.
 */
export function caseFigures(prepared: PreparedCase): Figure[] {
  const { making } = prepared.knowledge;
  const signs = new Set(prepared.looks.map((look) => look.sign));
  const all = new Set<Figure>([
    ...Object.values(making.thorough),
    ...Object.values(making.spared),
    ...Object.values(making.reused),
    ...Object.values(making.oldStock),
    ...Object.values(making.sureness).flatMap((each) => [each.there, each.notThere]),
    ...prepared.observations.flatMap(({ expected }) =>
      Object.values(expected).map((word) => making.expected[word]),
    ),
    ...(prepared.lookedOver ? Object.values(making.lookedOver) : []),
    making.scrubbed,
    making.groupTogether,
    making.habitTogether,
    ...Object.values(making.imitation),
    making.alikeTogether,
    ...prepared.parts.flatMap((part) => part.renewed ?? []),
    ...prepared.alterations.flatMap((each) => Object.values(each.happened)),
    ...prepared.shops.flatMap((shop) => [
      shop.share,
      ...shop.habits
        .filter((habit) => [...signs].some((sign) => sign.id === habit.sign))
        .map((habit) => habit.shows),
    ]),
    ...[...signs].flatMap(({ campaign }) =>
      campaign === undefined
        ? []
        : [campaign.shows, making.campaigns[campaign.kind]?.inACentury ?? []].flat(),
    ),
    ...[...signs].sort((a, b) => (a.id < b.id ? -1 : 1)).flatMap((sign) => Object.values(sign.shows)),
  ]);
  return [...all];
}
