import type { Span } from './schema.ts';

/** When a sign was in use, without a stop: `in use from 1806, rare until 1860, common from 1890; nothing can show it earlier`. */
export function spanWords({ earliest, rareUntil, commonFrom, commonUntil, latest, hardFloor }: Span): string {
  const rare = rareUntil === undefined ? '' : `, rare until ${rareUntil}`;
  const until = commonUntil === undefined ? '' : ` until ${commonUntil}`;
  const gone = latest === undefined ? '' : `, gone by ${latest}`;
  const floor = hardFloor ? '; nothing can show it earlier' : '';
  return `in use from ${earliest}${rare}, common from ${commonFrom}${until}${gone}${floor}`;
}
