import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { RecordedEvent } from '../../src/piece/event.ts';
import { chainStart, linkEvent } from '../../src/record/chain.ts';
import type { EventLog } from '../../src/record/eventLog.ts';
import { memoryLog } from '../../src/record/memoryLog.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { finding, opening } from '../kits/drafts.ts';
import { sha256 } from '../kits/pictures.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

/** Every log must do all of this: the one in memory and the one on disk. */
const logs: [string, () => Promise<EventLog>][] = [
  ['in memory', async () => memoryLog()],
  ['on disk', async () => sqliteLog(join(await temporaryFolder(), 'record.db'))],
];

describe.each(logs)('a log %s', (_name, make) => {
  const openLog = async () => {
    const log = await make();
    onTestFinished(() => log.close());
    return log;
  };

  it('gives back what it was given, in order, with places that count up from 1 over all pieces', async () => {
    const log = await openLog();
    const [a, b, c] = chainOf(opening('one'), opening('two'), finding('one', 'saw', 'splat'));
    expect(log.append([a, b])).toBe(1);
    expect(log.append([c])).toBe(3);
    expect(log.ofPiece('one')).toEqual([
      { position: 1, event: a },
      { position: 3, event: c },
    ]);
    expect(log.pieces()).toEqual(['one', 'two']);
    expect(log.find(b.id)).toEqual(b);
  });

  it('knows nothing of what it was never given', async () => {
    const log = await openLog();
    expect(log.ofPiece('one')).toEqual([]);
    expect(log.find('00000000-0000-4000-8000-000000000000')).toBeUndefined();
    expect(log.head('tablet-1')).toBeUndefined();
    expect(log.pieces()).toEqual([]);
  });

  it('knows the head of each device', async () => {
    const log = await openLog();
    const [a, b] = chainOf(opening('one'), finding('one', 'saw', 'splat'));
    const other = linkEvent(opening('two', { device: 'laptop' }), chainStart);
    log.append([a, other, b]);
    expect(log.head('tablet-1')).toMatchObject({ seq: 2, hash: b.hash });
    expect(log.head('laptop')).toMatchObject({ seq: 1, hash: other.hash });
  });

  it('has an id that stays, and a head over all devices that tells one record from another', async () => {
    const log = await openLog();
    const { recordId } = log;
    expect(recordId).toMatch(/^[0-9a-f-]{36}$/);
    expect(log.recordHead()).toEqual({ count: 0, hash: sha256(Buffer.from('[]')) });
    const [a, b] = chainOf(opening('one'), finding('one', 'saw', 'splat'));
    const other = linkEvent(opening('two', { device: 'laptop' }), chainStart);
    log.append([a, other, b]);
    // The text stands here by hand: devices sorted, each with its last number and hash.
    const text = `[["laptop",1,"${other.hash}"],["tablet-1",2,"${b.hash}"]]`;
    expect(log.recordHead()).toEqual({ count: 3, hash: sha256(Buffer.from(text)) });
    expect(log.recordId).toBe(recordId);
  });

  it('takes all of a batch or none of it', async () => {
    const log = await openLog();
    const [a, b] = chainOf(opening('one'), finding('one', 'saw', 'splat'));
    log.append([a]);
    expect(() => log.append([b, a])).toThrow();
    expect(log.find(b.id)).toBeUndefined();
    expect(log.head('tablet-1')).toMatchObject({ seq: 1 });
  });

  it('refuses two events of one device with one number', async () => {
    const log = await openLog();
    log.append([linkEvent(opening('one'), chainStart)]);
    expect(() => log.append([linkEvent(opening('two'), chainStart)])).toThrow();
    expect(log.pieces()).toEqual(['one']);
  });

  it('does not change with what is done to its answers or to what it was given', async () => {
    const log = await openLog();
    const [a] = chainOf(opening('one'));
    log.append([a]);
    const before = structuredClone(log.find(a.id));
    a.who = 'someone else';
    const answer = log.find(a.id);
    if (answer) answer.who = 'another';
    expect(log.find(a.id)).toEqual(before);
  });
});

function chainOf<Drafts extends ReturnType<typeof opening>[]>(
  ...drafts: Drafts
): { [Index in keyof Drafts]: RecordedEvent } {
  let head = chainStart;
  return drafts.map((draft) => {
    const event = linkEvent(draft, head);
    head = event;
    return event;
  }) as { [Index in keyof Drafts]: RecordedEvent };
}
