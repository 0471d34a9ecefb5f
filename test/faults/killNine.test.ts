import { describe, expect, it } from 'vitest';
import type { DraftEvent } from '../../src/piece/event.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { startServer } from '../browser/support/startServer.ts';
import { finding, opening } from '../kits/drafts.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

const rounds = 20;

/** Hands findings in one after another until the program is gone; gives back those it answered for. */
async function enterUntilKilled(
  address: string,
  nextSign: () => string,
): Promise<{ acknowledged: string[]; handedIn: number }> {
  const acknowledged: string[] = [];
  let handedIn = 0;
  for (;;) {
    const act = finding('one', nextSign(), 'splat');
    handedIn++;
    const answer = await hand(address, act).catch(() => undefined);
    if (answer === undefined) return { acknowledged, handedIn };
    acknowledged.push(...answer);
  }
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

describe('a program killed while findings are entered', () => {
  it(`has every acknowledged act after each of ${rounds} kills, and a chain that holds`, async () => {
    const dir = await temporaryFolder();
    const acknowledged = new Set<string>();
    let signs = 0;
    for (let round = 0; round < rounds; round++) {
      const server = await startServer(dir);
      if (round === 0) for (const id of await hand(server.address, opening('one'))) acknowledged.add(id);
      const entering = enterUntilKilled(server.address, () => `sign-${++signs}`);
      // The moment differs from round to round, so that the kill falls at different points of a write.
      await new Promise((resolve) => setTimeout(resolve, 60 + ((round * 37) % 90)));
      await server.kill();
      const entered = await entering;
      expect(entered.acknowledged.length).toBeGreaterThan(0);
      for (const id of entered.acknowledged) acknowledged.add(id);
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
  });
});
