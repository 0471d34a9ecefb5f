import type { Weighing } from '../../weighing/weighing.ts';

type Years = Pick<Weighing['years'], 'p90'>;

/** How a part's years stand to the piece's, in words; undefined where they go together. */
export function standsApart(piece: Years, part: Years): string | undefined {
  if (part.p90[0] > piece.p90[1]) return 'later than the piece';
  if (part.p90[1] < piece.p90[0]) return 'older than the piece';
  return undefined;
}

/** `1740–1765`, or one year. */
export function spanWords([from, to]: readonly [number, number]): string {
  return from === to ? String(from) : `${from}–${to}`;
}
