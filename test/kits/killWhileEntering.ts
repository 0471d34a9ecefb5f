import { expect } from 'vitest';
import type { DraftEvent } from '../../src/piece/event.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { startServer } from '../browser/support/startServer.ts';
import { finding, opening } from './drafts.ts';
import { temporaryFolder } from './temporaryFolder.ts';

/**
 * Kills the program `rounds` times while findings are entered: after each kill the chain must hold, and at the end
 * every act that the program answered for must be there.
 */
export async function killWhileEntering(rounds: number): Promise<void> {
  const dir = await temporaryFolder();
  const acknowledged = new Set<string>();
  let signs = 0;
  for (let round = 0; round < rounds; round++) {
    const server = await startServer(dir);
    if (round === 0) for (const id of await hand(server.address, opening('one'))) acknowledged.add(id);
    // Killed after another number of answers each time and a little later, while the next act is under way.
    const killAfter = 3 + (round % 7);
    let killing: Promise<void> | undefined;
    const entered = await enterUntilKilled(
      server.address,
      () => `sign-${++signs}`,
      (count) => {
        if (count === killAfter) killing = wait(round % 5).then(server.kill);
      },
    );
    await killing;
    expect(entered.length).toBeGreaterThanOrEqual(killAfter);
    for (const id of entered) acknowledged.add(id);
    expect(await verifyRecord(dir)).toMatchObject({ ok: true, faults: [] });
  }
  const server = await startServer(dir);
  const { events } = (await (await fetch(`${server.address}api/pieces/one/history`)).json()) as {
    events: { id: string }[];
  };
  await server.stop();
  const kept = new Set(events.map((event) => event.id));
  expect([...acknowledged].filter((id) => !kept.has(id))).toEqual([]);
  expect(kept.size - acknowledged.size).toBeLessThanOrEqual(rounds);
}

const wait = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

/**
 * Hands findings in one after another until the program is gone; gives back those it answered for.
 *
 * @param onAnswer  told how many were answered for so far
 */
async function enterUntilKilled(
  address: string,
  nextSign: () => string,
  onAnswer: (count: number) => void,
): Promise<string[]> {
  const acknowledged: string[] = [];
  for (;;) {
    const answer = await hand(address, finding('one', nextSign(), 'splat')).catch(goneOrFault);
    if (answer === 'gone') return acknowledged;
    acknowledged.push(...answer);
    onAnswer(acknowledged.length);
  }
}

/** A broken line means that the program is gone; anything else is a fault of its own. */
function goneOrFault(error: unknown): 'gone' {
  if (error instanceof TypeError) return 'gone';
  throw error;
}

async function hand(address: string, act: DraftEvent): Promise<string[]> {
  const answer = await fetch(`${address}api/pieces/one/events`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'x-underside': '1' },
    body: JSON.stringify({ events: [act] }),
  });
  if (!answer.ok) throw new Error(await answer.text());
  return ((await answer.json()) as { accepted: string[] }).accepted;
}
