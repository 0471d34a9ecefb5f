import { cp, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { EventOrigin, RecordedEvent } from '../../src/piece/event.ts';
import { chainStart, type Head, hashEvent, linkEvent } from '../../src/record/chain.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { act, finding, opening, step } from '../kits/drafts.ts';
import { pieceRecord } from '../kits/pieceRecord.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

/** A record into which a piece was brought from another, with a value written over unseen, an undo, and an act made here since. */
async function recordWithAdopted() {
  const first = await pieceRecord();
  first.enter(
    opening('one'),
    finding('one', 'a', 'splat'),
    finding('one', 'b', 'splat', { device: 'laptop' }),
  );
  first.enter(
    act('one', 'piece-described', [
      { path: ['title'], to: 'Seen another', saw: { value: 'Not what stood there' } },
    ]),
  );
  first.store.undo('one', step());
  const second = await pieceRecord();
  second.enter(opening('two'));
  await second.bringIn(await first.takeOut('one'));
  second.enter(finding('one', 'c', 'splat'));
  const acts = [...second.store.history('two'), ...second.store.history('one')];
  second.close();
  return { dir: second.dir, acts };
}

/** The same acts with what one says of its origin changed, every hash of this record's own chains made to fit. */
async function rewritten(
  { dir, acts }: Awaited<ReturnType<typeof recordWithAdopted>>,
  change: (act: RecordedEvent & { origin: EventOrigin }, index: number) => EventOrigin | undefined,
): Promise<string> {
  const to = join(await temporaryFolder(), 'rewritten');
  await cp(dir, to, { recursive: true });
  for (const name of ['record.db', 'record.db-wal', 'record.db-shm'])
    await rm(join(to, name), { force: true });
  const heads = new Map<string, Head>();
  let index = 0;
  const linked = acts.map((one) => {
    const { seq: _seq, before: _before, hash: _hash, origin, ...draft } = one;
    const said = origin === undefined ? undefined : (change({ ...one, origin }, index++) ?? origin);
    const event = linkEvent(
      said === undefined ? draft : ({ ...draft, origin: said } as typeof draft),
      heads.get(one.device) ?? chainStart,
    );
    heads.set(one.device, event);
    return event;
  });
  const log = sqliteLog(join(to, 'record.db'));
  log.append(linked);
  log.close();
  return to;
}

const found = async (dir: string) => {
  const { ok, faults, remarks } = await verifyRecord(dir);
  return { ok, codes: [...new Set(faults.map(({ code }) => code))], remarks };
};
const zeros = '0'.repeat(64);

describe('what acts from another record say of their origin', () => {
  it('holds for a record as it came, rewritten without a change too', async () => {
    const record = await recordWithAdopted();
    expect(await found(record.dir)).toEqual({ ok: true, codes: [], remarks: [] });
    expect(await found(await rewritten(record, () => undefined))).toEqual({
      ok: true,
      codes: [],
      remarks: [],
    });
  });

  it('is found where any of it was changed, though this record’s own hashes were made to fit', async () => {
    const record = await recordWithAdopted();
    const second = (change: (origin: EventOrigin) => EventOrigin) =>
      rewritten(record, ({ origin }, index) => (index === 1 ? change(origin) : undefined));
    for (const [code, dir] of [
      ['verify.origin-differs', await second((origin) => ({ ...origin, hash: zeros }))],
      ['verify.origin-differs', await second((origin) => ({ ...origin, seq: origin.seq + 7 }))],
      ['verify.origin-differs', await second((origin) => ({ ...origin, before: zeros }))],
      ['verify.origin-place', await second((origin) => ({ ...origin, record: 'another-record' }))],
    ] as const)
      expect(await found(dir)).toMatchObject({ ok: false, codes: expect.arrayContaining([code]) });
  });

  it('is told where two acts claim one place, or neighbors do not hang together: a record that went on in two copies', async () => {
    const record = await recordWithAdopted();
    const dir = await rewritten(record, (one, index) => {
      if (index !== 3) return undefined;
      const { origin, ...event } = one;
      const before = 'a'.repeat(64);
      return { ...origin, before, hash: hashEvent({ ...event, seq: origin.seq, before }) };
    });
    const { ok, codes, remarks } = await found(dir);
    expect([ok, codes]).toEqual([true, []]);
    expect(remarks).toEqual([
      expect.stringMatching(/^The acts of tablet-1 that came from the record .* do not all hang together/),
    ]);
  });
});
