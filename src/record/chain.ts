import { createHash } from 'node:crypto';
import type { DraftEvent, RecordedEvent } from '../piece/event.ts';
import { canonicalJson } from './canonicalJson.ts';

/** Where a device's chain stands: the number and hash of its last event. */
export type Head = { seq: number; hash: string };

/** Where every chain begins. */
export const chainStart: Head = { seq: 0, hash: '0'.repeat(64) };

/** The event as it is kept, hung on the one before it from the same device. */
export function linkEvent(draft: DraftEvent, head: Head): RecordedEvent {
  const unsealed = { ...draft, seq: head.seq + 1, before: head.hash };
  return { ...unsealed, hash: hashEvent(unsealed) };
}

/** SHA-256, in hex, over the canonical JSON of all of an event but its own hash. */
export function hashEvent(event: Omit<RecordedEvent, 'hash'> & { hash?: string }): string {
  const { hash: _own, ...rest } = event;
  return createHash('sha256').update(canonicalJson(rest)).digest('hex');
}
