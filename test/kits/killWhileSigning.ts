import { randomUUID } from 'node:crypto';
import { expect } from 'vitest';
import type { DraftEvent } from '../../src/piece/event.ts';
import type { Piece } from '../../src/piece/piece.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { startServer, type TestServer } from '../browser/support/startServer.ts';
import { act, opening } from './drafts.ts';
import { sha256 } from './pictures.ts';
import { concluded } from './signedRecord.ts';
import { temporaryFolder } from './temporaryFolder.ts';

/**
 * Kills the program `rounds` times while a revision is being signed, each time at another moment: a signing that was
 * acknowledged must be there with its files, one that was not is there whole or not at all, and the record must hold.
 *
 * @returns how many signings were acknowledged, and how many revisions there are at the end
 */
export async function killWhileSigning(
  rounds: number,
): Promise<{ acknowledged: number; revisions: number; cutOff: number }> {
  const dir = await temporaryFolder();
  const acknowledged = new Set<number>();
  let usualMs = 0;
  let cutOff = 0;
  for (let round = 0; round <= rounds; round++) {
    const server = await startServer(dir);
    if (round === 0) await hand(server, [opening('one'), concluded('one')]);
    const before = await pieceOne(server);
    for (const revision of acknowledged) expect(before.piece.issued[revision]).toBeDefined();
    const next = Object.keys(before.piece.issued).length + 1;
    if (before.piece.opinion.status === 'signed') await hand(server, nextRevision());
    const began = Date.now();
    // The first one is not killed: it tells how long a signing takes. The others are killed all along that time.
    const killing =
      round === 0 ? undefined : wait(usualMs * (0.15 + (1.1 * (round % 17)) / 17)).then(server.kill);
    const signed = await sign(server, (await pieceOne(server).catch(goneOrFault))?.seq);
    if (signed) acknowledged.add(next);
    else cutOff += 1;
    if (round === 0) usualMs = Date.now() - began;
    await (killing ?? server.kill());
    expect(await verifyRecord(dir)).toMatchObject({ ok: true, faults: [] });
  }
  const server = await startServer(dir);
  const { piece } = await pieceOne(server);
  for (const revision of acknowledged) expect(Object.keys(piece.issued)).toContain(String(revision));
  for (const { revision, pdfSha256 } of Object.values(piece.issued)) {
    const file = await fetch(`${server.address}api/pieces/one/issued/${revision}/opinion.pdf`);
    expect(sha256(new Uint8Array(await file.arrayBuffer()))).toBe(pdfSha256);
  }
  await server.stop();
  return { acknowledged: acknowledged.size, revisions: Object.keys(piece.issued).length, cutOff };
}

const wait = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

const nextRevision = () => [
  act('one', 'revision-begun', [{ path: ['opinion', 'status'], to: 'draft' }]),
  act('one', 'opinion-changed', [
    { path: ['opinion', 'isNew'], to: 'Nothing.' },
    { path: ['opinion', 'why'], to: 'To try.' },
  ]),
];

/** Signs and follows it to its end; true only where the program said that it is done. */
async function sign(server: TestServer, seq: number | undefined): Promise<boolean> {
  if (seq === undefined) return false;
  try {
    const { job } = await post<{ job: string }>(server, 'api/pieces/one/issue', {
      id: randomUUID(),
      name: 'Perrin Halloway (invented)',
      day: '2026-11-25',
      who: 'P',
      device: 'tablet-1',
      at: '2026-11-25T11:00:00Z',
      seq,
    });
    for (;;) {
      const state = (await (await fetch(`${server.address}api/jobs/${job}`)).json()) as {
        state: string;
        message?: string;
      };
      if (state.state === 'done') return true;
      if (state.state === 'failed') throw new Error(state.message);
      await wait(15);
    }
  } catch (error) {
    goneOrFault(error);
    return false;
  }
}

/** A broken line means that the program is gone; anything else is a fault of its own. */
function goneOrFault(error: unknown): undefined {
  if (error instanceof TypeError || (error as Error).name === 'SyntaxError') return undefined;
  throw error;
}

async function pieceOne(server: TestServer): Promise<{ piece: Piece; seq: number }> {
  return (await (await fetch(`${server.address}api/pieces/one`)).json()) as { piece: Piece; seq: number };
}

function hand(server: TestServer, events: DraftEvent[]): Promise<unknown> {
  return post(server, 'api/pieces/one/events', { events });
}

async function post<Answer>(server: TestServer, path: string, body: unknown): Promise<Answer> {
  const answer = await fetch(server.address + path, {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'x-underside': '1' },
    body: JSON.stringify(body),
  });
  if (!answer.ok) throw new Error(await answer.text());
  return (await answer.json()) as Answer;
}
