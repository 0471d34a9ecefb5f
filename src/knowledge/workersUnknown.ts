import type { Shop } from './schema.ts';

/** What is said of a place of whose workers nothing was read. */
export const workersUnknownWords =
  'Who did the work beside the masters is not known here: nothing was read of it.';

/** Whether it must be said of a place that its workers are not known; an invented shop had none. */
export function areWorkersUnknown({ whoWorked, invented }: Pick<Shop, 'whoWorked' | 'invented'>): boolean {
  return whoWorked === undefined && !invented;
}
