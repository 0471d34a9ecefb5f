import type { Shop } from './schema.ts';

/** What is printed of a shop file that is provisional. */
export const provisionalWords =
  'Provisional: no work is cited for any of these habits, and no records were counted.';

/** Whether a shop file rests on nothing that can be opened: no habit was counted, and no work is cited anywhere for its figures. */
export function isProvisional({
  habits,
  basis,
  sources,
}: Pick<Shop, 'habits' | 'basis' | 'sources'>): boolean {
  const isCited = sources.length > 0 || basis?.source !== undefined;
  return !isCited && habits.every(({ shows }) => shows.source === undefined && shows.counts === undefined);
}
