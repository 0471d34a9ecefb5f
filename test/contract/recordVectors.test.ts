import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { DraftEvent, RecordedEvent } from '../../src/piece/event.ts';
import { canonicalJson } from '../../src/record/canonicalJson.ts';
import { chainStart, hashEvent, linkEvent } from '../../src/record/chain.ts';
import type { EventLog } from '../../src/record/eventLog.ts';
import { memoryLog } from '../../src/record/memoryLog.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { createStore } from '../../src/record/store.ts';
import { sha256 } from '../kits/pictures.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';
import vectors from '../reference/recordVectors.json' with { type: 'json' };

/**
 * The format of the record and its hashes, against values written without this program (the recipe stands in the
 * file): a record kept today must hold for as long as the record is kept. Never mend the file to please the code.
 */
describe('canonical JSON', () => {
  it.each(vectors.numbers.values)('writes the number $ieee754 as $text (RFC 8785, appendix B)', (one) => {
    expect(canonicalJson(Buffer.from(one.ieee754, 'hex').readDoubleBE())).toBe(one.text);
  });

  it.each(vectors.texts)('writes $what ($source)', ({ json, canonical, sha256: hash }) => {
    expect(canonicalJson(JSON.parse(json))).toBe(canonical);
    expect(sha256(Buffer.from(canonical))).toBe(hash);
  });
});

const acts = vectors.chain.acts as unknown as {
  handedIn: DraftEvent;
  canonical: string;
  kept: RecordedEvent;
}[];
const kept = acts.map((one) => one.kept);

describe('the hash of an act', () => {
  it.each(acts)('covers the canonical text of $handedIn.kind', ({ canonical, kept: { hash, ...rest } }) => {
    expect(canonicalJson(rest)).toBe(canonical);
    expect(hashEvent(rest)).toBe(hash);
    expect(hashEvent({ ...rest, hash: 'whatever it says itself' })).toBe(hash);
  });

  it.each(vectors.altered.acts)('is another when $what differs', ({ act, sha256: hash }) => {
    const of = kept.find((one) => one.id === vectors.altered.of);
    expect(hashEvent(act as unknown as RecordedEvent)).toBe(hash);
    expect(hash).not.toBe(of?.hash);
  });

  it('is hung on the act before of the same device, or on 64 zeros', () => {
    const [first, other, second] = acts;
    if (!first || !other || !second) throw new Error('three acts');
    expect(linkEvent(first.handedIn, chainStart)).toEqual(first.kept);
    expect(linkEvent(other.handedIn, chainStart)).toEqual(other.kept);
    const filledIn = { ...second.handedIn, changes: second.kept.changes };
    expect(linkEvent(filledIn, first.kept)).toEqual(second.kept);
  });
});

const logs: [string, () => Promise<EventLog>][] = [
  ['in memory', async () => memoryLog()],
  ['on disk', async () => sqliteLog(join(await temporaryFolder(), 'record.db'))],
];

describe.each(logs)('a record %s', (_name, make) => {
  it('keeps three acts of two devices as they are written in the file', async () => {
    const log = await make();
    onTestFinished(() => log.close());
    const store = createStore(log);
    for (const { handedIn } of acts) expect(store.append([handedIn]).ok).toBe(true);
    expect(store.history('golden')).toEqual(kept);
    expect(log.head('tablet-1')).toEqual({ seq: 2, hash: kept[2]?.hash });
    expect(log.head('laptop')).toEqual({ seq: 1, hash: kept[1]?.hash });
  });
});
