import { randomUUID } from 'node:crypto';
import { expect } from 'vitest';
import { verifyRecord } from '../../src/record/verify.ts';
import { startServer } from '../browser/support/startServer.ts';
import { act, finding, opening } from './drafts.ts';
import { gradient, sha256 } from './pictures.ts';
import { temporaryFolder } from './temporaryFolder.ts';

/** What the program answered for: acts by their ids, and photos by the hash of their bytes. */
export type Acknowledged = { acts: Set<string>; photos: Map<string, Buffer> };

/**
 * One kind of work in the mix. It asks the program at `address` for something, and notes what it was answered for; it
 * throws a TypeError where the line breaks, which means that the program is gone.
 */
export type KindOfWork = (address: string, number: number, acknowledged: Acknowledged) => Promise<void>;

/** A finding is entered. */
const entry: KindOfWork = (address, number, acknowledged) =>
  hand(address, finding('one', `sign-${number}`, 'splat'), acknowledged);

/** A photo is sent, and then entered in the piece. */
const photo: KindOfWork = async (address, number, acknowledged) => {
  const bytes = await gradient(40 + (number % 200), 40 + Math.floor(number / 200))
    .jpeg()
    .toBuffer();
  const sha = sha256(bytes);
  const answer = await fetch(`${address}api/photos/${sha}`, {
    method: 'PUT',
    headers: { 'x-underside': '1' },
    body: new Uint8Array(bytes),
  });
  if (!answer.ok) throw new Error(await answer.text());
  const { widthPx, heightPx, mediaType } = (await answer.json()) as Record<string, string | number>;
  acknowledged.photos.set(sha, bytes);
  const id = randomUUID();
  const to = { id, sha256: sha, mediaType, name: 'a.jpg', bytes: bytes.length, widthPx, heightPx };
  await hand(address, act('one', 'photo-added', [{ path: ['photos', id], to: to as never }]), acknowledged);
};

/** The usual mix: three entries to a photo. A kind that is added here is killed in its midst with the others. */
export const mix: readonly KindOfWork[] = [entry, photo, entry, entry];

/**
 * Kills the program `rounds` times while it is at work of every kind: after each kill the record must hold, and at the end
 * every act and photo that the program answered for must be there, byte for byte.
 */
export async function killWhileEntering(rounds: number, kinds: readonly KindOfWork[] = mix): Promise<void> {
  const dir = await temporaryFolder();
  const acknowledged: Acknowledged = { acts: new Set(), photos: new Map() };
  const work = { number: 0 };
  for (let round = 0; round < rounds; round++) {
    const server = await startServer(dir);
    if (round === 0) await hand(server.address, opening('one'), acknowledged);
    // Killed after another number of answers each time and a little later, while the next work is under way.
    const killAfter = 3 + (round % 7);
    const killing = { ended: undefined as Promise<void> | undefined };
    for (let done = 0; ; ) {
      const kind = kinds[work.number % kinds.length] ?? entry;
      work.number += 1;
      const isGone = await kind(server.address, work.number, acknowledged).then(() => false, goneOrFault);
      if (isGone) break;
      done += 1;
      if (done === killAfter) killing.ended = wait((round % 5) * 3).then(server.kill);
    }
    await killing.ended;
    expect(await verifyRecord(dir)).toMatchObject({ ok: true, faults: [] });
  }
  await expectAllThere(dir, acknowledged, rounds);
}

async function expectAllThere(dir: string, acknowledged: Acknowledged, rounds: number): Promise<void> {
  const server = await startServer(dir);
  const { events } = (await (await fetch(`${server.address}api/pieces/one/history`)).json()) as {
    events: { id: string }[];
  };
  const kept = new Set(events.map((event) => event.id));
  expect([...acknowledged.acts].filter((id) => !kept.has(id))).toEqual([]);
  expect(kept.size - acknowledged.acts.size).toBeLessThanOrEqual(rounds);
  for (const [sha, bytes] of acknowledged.photos) {
    const answer = await fetch(`${server.address}api/photos/${sha}/original`);
    expect(Buffer.from(await answer.arrayBuffer()).equals(bytes), sha).toBe(true);
  }
  await server.stop();
}

const wait = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

/** A broken line means that the program is gone; anything else is a fault of its own. */
function goneOrFault(error: unknown): true {
  if (error instanceof TypeError) return true;
  throw error;
}

async function hand(address: string, one: ReturnType<typeof act>, acknowledged: Acknowledged): Promise<void> {
  const answer = await fetch(`${address}api/pieces/one/events`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'x-underside': '1' },
    body: JSON.stringify({ events: [one] }),
  });
  if (!answer.ok) throw new Error(await answer.text());
  for (const id of ((await answer.json()) as { accepted: string[] }).accepted) acknowledged.acts.add(id);
}
