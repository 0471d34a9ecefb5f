import type { RecordedEvent } from '../../piece/event.ts';

/**
 * How many acts on the piece came after it was signed: what they changed the signature does not cover.
 * Putting a piece away changes nothing of it and is not counted.
 *
 * @param events  as recorded, oldest first
 */
export function actsAfterSigning(events: readonly Pick<RecordedEvent, 'kind' | 'changes'>[]): number {
  const signing = events.findLastIndex(
    (event) =>
      event.kind === 'opinion-signed' &&
      event.changes.some((change) => change.path.join('.') === 'opinion.status' && change.to === 'signed'),
  );
  if (signing === -1) return 0;
  return events.slice(signing + 1).filter((event) => event.kind !== 'piece-put-away').length;
}
