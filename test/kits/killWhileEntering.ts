import { randomUUID } from 'node:crypto';
import { expect } from 'vitest';
import type { DraftEvent } from '../../src/piece/event.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { startServer } from '../browser/support/startServer.ts';
import { act, finding, opening } from './drafts.ts';
import { gradient, sha256 } from './pictures.ts';
import { temporaryFolder } from './temporaryFolder.ts';

/** What the program answered for. */
export type Acknowledged = {
  /** Acts by their ids. */
  acts: Set<string>;
  /** Photos by the hash of their bytes. */
  photos: Map<string, Buffer>;
  /** Back-ups by their names, each with the acts that were answered for before it was asked for. */
  copies: Map<string, Set<string>>;
  /** Signed revisions of the piece `two` by their numbers. */
  revisions: Set<number>;
};

/** The program at work: where it answers, and a folder apart for what it writes elsewhere. */
export type AtWork = { address: string; dir: string; disk: string };

/**
 * One kind of work in the mix. It asks the program for something, and notes what it was answered for; it throws a
 * TypeError where the line breaks, which means that the program is gone.
 */
export type KindOfWork = (at: AtWork, number: number, acknowledged: Acknowledged) => Promise<void>;

/** A finding is entered. */
export const entry: KindOfWork = ({ address }, number, acknowledged) =>
  hand(address, [finding('one', `sign-${number}`, 'splat')], acknowledged);

/** A photo is sent, and then entered in the piece. */
export const photo: KindOfWork = async ({ address }, number, acknowledged) => {
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
  await hand(address, [act('one', 'photo-added', [{ path: ['photos', id], to: to as never }])], acknowledged);
};

/** The usual mix: three entries to a photo. */
export const mix: readonly KindOfWork[] = [entry, photo, entry, entry];

/** What is done besides: before the first work, after each kill, and at the end with the program running again. */
export type Besides = {
  begin?: (at: AtWork, acknowledged: Acknowledged) => Promise<void>;
  afterKill?: (at: AtWork, acknowledged: Acknowledged) => Promise<void>;
  atEnd?: (at: AtWork, acknowledged: Acknowledged) => Promise<void>;
};

/**
 * Kills the program `rounds` times while it is at work of every kind: after each kill the record must hold, and at the end
 * every act and photo that the program answered for must be there, byte for byte.
 *
 * @returns how many pieces of work of each kind were cut off, and all that was answered for
 */
export async function killWhileEntering(
  rounds: number,
  kinds: readonly KindOfWork[] = mix,
  besides: Besides = {},
): Promise<{ cutOff: Record<string, number>; acknowledged: Acknowledged }> {
  const [dir, disk] = [await temporaryFolder(), await temporaryFolder()];
  const acknowledged: Acknowledged = {
    acts: new Set(),
    photos: new Map(),
    copies: new Map(),
    revisions: new Set(),
  };
  const cutOff: Record<string, number> = Object.fromEntries(kinds.map(({ name }) => [name, 0]));
  const usualMs = new Map<KindOfWork, number>();
  const work = { number: 0 };
  const next = () => kinds[work.number % kinds.length] ?? entry;
  for (let round = 0; round < rounds; round++) {
    const server = await startServer(dir);
    const at = { address: server.address, dir, disk };
    if (round === 0) {
      await hand(at.address, [opening('one')], acknowledged);
      await besides.begin?.(at, acknowledged);
    }
    // Killed after another number of answers each time, at another moment of the work that is then under way.
    const killAfter = 3 + (round % 7);
    const killing = { ended: undefined as Promise<void> | undefined };
    for (let done = 0; ; ) {
      const kind = next();
      work.number += 1;
      const began = Date.now();
      const isGone = await kind(at, work.number, acknowledged).then(() => false, goneOrFault);
      if (isGone) {
        cutOff[kind.name] = (cutOff[kind.name] ?? 0) + 1;
        break;
      }
      usualMs.set(kind, Date.now() - began);
      done += 1;
      if (done === killAfter)
        killing.ended = wait(((round % 5) / 5) * (usualMs.get(next()) ?? 15)).then(server.kill);
    }
    await killing.ended;
    expect(await verifyRecord(dir)).toMatchObject({ ok: true, faults: [] });
    await besides.afterKill?.(at, acknowledged);
  }
  const server = await startServer(dir);
  try {
    await expectAllThere(server.address, acknowledged, rounds);
    await besides.atEnd?.({ address: server.address, dir, disk }, acknowledged);
  } finally {
    await server.stop();
  }
  return { cutOff, acknowledged };
}

async function expectAllThere(address: string, acknowledged: Acknowledged, rounds: number): Promise<void> {
  const kept = new Set<string>();
  const { pieces } = await ask<{ pieces: { id: string; example: boolean }[] }>(address, 'api/pieces');
  for (const { id } of pieces.filter(({ example }) => !example))
    for (const event of (await ask<{ events: { id: string }[] }>(address, `api/pieces/${id}/history`)).events)
      kept.add(event.id);
  expect([...acknowledged.acts].filter((id) => !kept.has(id))).toEqual([]);
  // No more than was cut off: each kill can hide the answer of one hand-in, which is two acts at most.
  expect(kept.size - acknowledged.acts.size).toBeLessThanOrEqual(2 * rounds);
  for (const [sha, bytes] of acknowledged.photos) {
    const answer = await fetch(`${address}api/photos/${sha}/original`);
    expect(Buffer.from(await answer.arrayBuffer()).equals(bytes), sha).toBe(true);
  }
}

const wait = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

/** A broken line means that the program is gone; anything else is a fault of its own. */
export function goneOrFault(error: unknown): true {
  if (error instanceof TypeError || (error as Error).name === 'SyntaxError') return true;
  throw error;
}

/** Hands in acts on one piece, and notes those that were answered for. */
export async function hand(
  address: string,
  acts: readonly DraftEvent[],
  acknowledged: Acknowledged,
): Promise<void> {
  const { accepted } = await ask<{ accepted: string[] }>(address, `api/pieces/${acts[0]?.piece}/events`, {
    events: acts,
  });
  for (const id of accepted) acknowledged.acts.add(id);
}

/** Asks the program something, or with a body hands it in. */
export async function ask<Answer>(address: string, path: string, body?: unknown): Promise<Answer> {
  const answer = await fetch(
    address + path,
    body === undefined
      ? {}
      : {
          method: 'POST',
          headers: { 'content-type': 'application/json', 'x-underside': '1' },
          body: JSON.stringify(body),
        },
  );
  if (!answer.ok) throw new Error(await answer.text());
  return (await answer.json()) as Answer;
}

/** Follows a job to its end. @throws with what it says where it fails */
export async function followed(address: string, job: string): Promise<void> {
  for (;;) {
    const now = await ask<{ state: string; message?: string }>(address, `api/jobs/${job}`);
    if (now.state === 'done') return;
    if (now.state === 'failed') throw new Error(now.message);
    await wait(15);
  }
}
