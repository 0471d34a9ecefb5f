import { describe, expect, it } from 'vitest';
import { CannotOpen } from '../../src/record/fault.ts';
import { openDataFolder } from '../../src/record/openDataFolder.ts';
import { createStore } from '../../src/record/store.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { folderWith, placesToCut, type Waiting, waitingRecord, walParts } from '../kits/cutWal.ts';
import { finding, opening } from '../kits/drafts.ts';

type Commit = Waiting['commits'][number];

/** Opens a folder as the program does; the ids of its acts, and that a next act is taken; or the sentence that says why not. */
function opened(dir: string): string[] | string {
  try {
    const { log, lock } = openDataFolder(dir);
    const ids = log.pieces().flatMap((piece) => log.ofPiece(piece).map(({ event }) => event.id));
    const next = ids.length === 0 ? opening('one') : finding('one', 'next', 'splat');
    expect(createStore(log).append([next]).ok).toBe(true);
    log.close();
    lock.release();
    return ids;
  } catch (error) {
    if (error instanceof CannotOpen) return error.message;
    throw error;
  }
}

/** What a record says of itself and against the last head that was noted, before and after it is opened. */
async function expectPrefix(dir: string, left: Commit, all: Commit): Promise<void> {
  const cutOff = all.ids.length - left.ids.length;
  expect(await verifyRecord(dir)).toMatchObject({
    ok: true,
    faults: [],
    events: left.ids.length,
    head: left.head,
  });
  const against = await verifyRecord(dir, { hash: all.head.hash, count: all.head.count });
  if (cutOff === 0) expect(against.faults).toEqual([]);
  else
    expect(against.faults).toEqual([
      {
        code: 'verify.other-head',
        path: 'record.db',
        message: `The head was noted after ${all.ids.length} acts, and the record holds ${left.ids.length}: acts were cut off, or this is another record.`,
      },
    ]);
  expect(opened(dir)).toEqual(left.ids);
  const { ok, events } = await verifyRecord(dir);
  expect({ ok, events }).toEqual({ ok: true, events: left.ids.length + 1 });
}

describe('what waits beside a record to be brought in', () => {
  it('cut short at any place leaves what was acknowledged by then, and a noted head tells what is missing', async () => {
    const waiting = await waitingRecord(4, true);
    const all = waiting.commits.at(-1) as Commit;
    const lengths = new Set<number>();
    for (const at of placesToCut(waiting)) {
      const left = waiting.commits.findLast(({ walBytes }) => walBytes <= at) as Commit;
      await expectPrefix(await folderWith(waiting.record, waiting.wal.subarray(0, at)), left, all);
      lengths.add(left.ids.length);
    }
    // From nothing but what was in the record's own file to all.
    expect([...lengths]).toEqual([1, 2, 3, 4, 5]);
  });

  it('torn in the middle leaves what was acknowledged before the tear', async () => {
    const waiting = await waitingRecord(4, true);
    const all = waiting.commits.at(-1) as Commit;
    const { frameHeader } = walParts;
    for (const [index, before] of waiting.commits.slice(0, -1).entries()) {
      const end = waiting.commits[index + 1]?.walBytes ?? 0;
      for (const at of [before.walBytes + frameHeader / 2, before.walBytes + frameHeader + 100, end - 600]) {
        const torn = Buffer.from(waiting.wal);
        // A sector that came out as something else.
        for (let byte = at; byte < at + 512; byte++) torn[byte] = (torn[byte] ?? 0) ^ 0xa5;
        await expectPrefix(await folderWith(waiting.record, torn), before, all);
      }
    }
  });

  it('of a record that is new, cut short at any place, leaves a prefix or a plain sentence', async () => {
    const waiting = await waitingRecord(2, false);
    const all = waiting.commits.at(-1) as Commit;
    for (const at of placesToCut(waiting)) {
      const dir = await folderWith(waiting.record, waiting.wal.subarray(0, at));
      const left = waiting.commits.findLast(({ walBytes }) => walBytes <= at);
      if (left !== undefined) await expectPrefix(dir, left, all);
      else {
        const noted = { hash: all.head.hash, count: all.head.count };
        const codes = async () => (await verifyRecord(dir, noted)).faults.map(({ code }) => code);
        expect(await codes(), `cut at ${at}`).toEqual(['record.not-a-record', 'verify.other-head']);
        // Not even its tables were there yet: it is begun anew, and the head that was noted tells.
        expect(opened(dir)).toEqual([]);
        expect(await codes()).toEqual(['verify.other-head']);
      }
    }
  });
});
