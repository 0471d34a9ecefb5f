import { expect } from 'vitest';
import { act, opening } from '../../../test/kits/drafts.ts';
import type { DraftEvent, Json } from '../../piece/event.ts';
import type { EventLog } from '../eventLog.ts';
import { memoryLog } from '../memoryLog.ts';
import { createStore, type RecordStore } from '../store.ts';

export const example: Json = { id: 'example-chair', form: 'side-chair', example: true };
export const bases = new Map([['example-chair', example]]);
export const titled = (to: Json, more: Partial<DraftEvent> = {}) =>
  act('one', 'piece-described', [{ path: ['title'], to }], more);

export function opened(log: EventLog = memoryLog(), ...acts: DraftEvent[]) {
  const store = createStore(log, bases);
  expect(store.append([opening('one'), ...acts]).ok).toBe(true);
  return store;
}

export const refused = (code: string, message: string, path = '') => ({
  ok: false,
  faults: [{ code, path, message }],
});
export const idUsed = (id: string) =>
  refused(
    'record.id-used',
    `The act ${id} is in the record already, and says something else: give the new act an id of its own.`,
    'id',
  );
export const title = (store: RecordStore) => store.piece('one')?.piece.title;
