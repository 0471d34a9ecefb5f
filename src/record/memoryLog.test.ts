import { expect, it } from 'vitest';
import { finding, opening } from '../../test/kits/drafts.ts';
import type { RecordedEvent } from '../piece/event.ts';
import { chainStart, type Head, linkEvent } from './chain.ts';
import { memoryLog } from './memoryLog.ts';
import { recordHead } from './recordHead.ts';

const drafts = [
  opening('one'),
  opening('two', { device: 'laptop' }),
  ...['a', 'b', 'c'].map((sign) => finding('one', sign, 'splat')),
];

function chained(): RecordedEvent[] {
  const heads = new Map<string, Head>();
  return drafts.map((draft) => {
    const event = linkEvent(draft, heads.get(draft.device) ?? chainStart);
    heads.set(draft.device, event);
    return event;
  });
}

const filled = () => {
  const log = memoryLog();
  const events = chained();
  log.append(events);
  return { log, events };
};
const places = (found: { position: number }[]) => found.map(({ position }) => position);

it('gives a part of a piece: the first after a place, the last before one', () => {
  const { log } = filled();
  expect(places(log.ofPiece('one'))).toEqual([1, 3, 4, 5]);
  expect(places(log.ofPiece('one', { after: 0, most: 2 }))).toEqual([1, 3]);
  expect(places(log.ofPiece('one', { after: 3, most: 9 }))).toEqual([4, 5]);
  expect(places(log.ofPiece('one', { before: 5, most: 2 }))).toEqual([3, 4]);
  expect(places(log.ofPiece('one', { before: 5, most: 9 }))).toEqual([1, 3, 4]);
  expect(log.count('one')).toBe(4);
  expect(log.count('two')).toBe(1);
});

it('finds an act by its device and number', () => {
  const { log, events } = filled();
  expect(log.at('tablet-1', 3)).toEqual(events[3]);
  expect(log.at('laptop', 1)).toEqual(events[1]);
  expect(log.at('laptop', 2)).toBeUndefined();
});

it('knows where the chain of each device stands', () => {
  const { log, events } = filled();
  const [, laptop, , , tablet] = events as [never, RecordedEvent, never, never, RecordedEvent];
  expect(log.recordHead()).toEqual(recordHead([tablet, laptop], 5));
  expect(log.head('tablet-1')).toEqual({ seq: 4, hash: tablet.hash });
});

it('refuses an act under an id or a place that it holds, and says which', () => {
  const { log, events } = filled();
  const [first] = events as [RecordedEvent];
  const id = '6f1d3a52-0c4e-4b7a-9f21-3d5c8e7a1b01';
  const message = (act: string) => `event ${act} is in the record already`;
  expect(() => log.append([{ ...first, seq: 99 }])).toThrow(message(first.id));
  expect(() => log.append([{ ...first, id }])).toThrow(message(id));
  // Twice within one batch is twice.
  expect(() =>
    log.append([
      { ...first, id, seq: 99 },
      { ...first, id, seq: 98 },
    ]),
  ).toThrow(message(id));
  expect(() =>
    log.append([
      { ...first, id, seq: 99 },
      { ...first, id: first.piece, seq: 99 },
    ]),
  ).toThrow(message(first.piece));
  expect(log.recordHead().count).toBe(5);
});

it('keeps its own copy of what it was given and of what it gives', () => {
  const { log, events } = filled();
  const [first] = chained();
  (events[0] as RecordedEvent).who = 'somebody else';
  const at = log.at('tablet-1', 1) as RecordedEvent;
  at.who = 'another';
  for (const { event } of log.ofPiece('one')) event.who = 'a third';
  expect(log.find((first as RecordedEvent).id)?.who).toBe('Perrin Halloway (invented)');
  expect(log.at('tablet-1', 1)?.who).toBe('Perrin Halloway (invented)');
});
