import { spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import type { DraftEvent } from '../../src/piece/event.ts';
import { datedCopies } from '../../src/record/backup/backupFolder.ts';
import { verifyBackup } from '../../src/record/backup/verifyBackup.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { startServer } from '../browser/support/startServer.ts';
import { act, finding, opening } from './drafts.ts';
import { gradient, sha256 } from './pictures.ts';
import { temporaryFolder } from './temporaryFolder.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const headers = { 'content-type': 'application/json', 'x-underside': '1' };

/**
 * Makes `rounds` back-ups from a terminal, in the way the README says, while findings and photos are entered without a
 * pause; restores each, and every act that was answered for before the back-up was asked for must be in it.
 */
export async function backupWhileEntering(rounds: number): Promise<void> {
  const [dir, disk] = [await temporaryFolder(), await temporaryFolder()];
  const server = await startServer(dir);
  const entry = await beginEntering(server.address);
  try {
    for (let round = 0; round < rounds; round++) {
      await entry.more(5);
      const before = [...entry.acknowledged];
      expect((await run('backup', join(disk, 'copies'), '--data', dir)).code).toBe(0);
      expect(entry.acknowledged.length, 'entries went on meanwhile').toBeGreaterThan(before.length);
      const to = join(disk, `again-${round}`);
      const restored = await run('restore', join(disk, 'copies'), to);
      expect(restored).toMatchObject({ code: 0, err: '' });
      expect(await verifyRecord(to)).toMatchObject({ ok: true, faults: [] });
      const kept = idsIn(to);
      expect(before.filter((id) => !kept.has(id))).toEqual([]);
    }
  } finally {
    await entry.end();
    await server.stop();
  }
}

/**
 * Kills `rounds` back-ups at another moment each, while entries go on: every copy that has its name must be whole, and
 * the next back-up must be made as if nothing had been.
 */
export async function killBackups(rounds: number): Promise<void> {
  const [dir, disk] = [await temporaryFolder(), await temporaryFolder()];
  const server = await startServer(dir);
  const entry = await beginEntering(server.address);
  const folder = join(disk, 'copies');
  try {
    const began = Date.now();
    await run('backup', folder, '--data', dir);
    const takes = Date.now() - began;
    for (let round = 0; round < rounds; round++) {
      await entry.more(3);
      await run('backup', folder, '--data', dir, (takes * (round + 0.5)) / rounds);
      for (const { path, name } of await datedCopies(folder))
        expect((await verifyBackup(folder, path)).faults, name).toEqual([]);
    }
    const before = [...entry.acknowledged];
    expect((await run('backup', folder, '--data', dir)).code).toBe(0);
    const [newest] = await datedCopies(folder);
    const kept = idsIn(newest?.path ?? '');
    expect(before.filter((id) => !kept.has(id))).toEqual([]);
  } finally {
    await entry.end();
    await server.stop();
  }
}

/** Findings, and a photo with every tenth, handed in one after another until it is ended. */
async function beginEntering(address: string) {
  const acknowledged: string[] = [];
  const hand = async (one: DraftEvent) => {
    const answer = await fetch(`${address}api/pieces/one/events`, {
      method: 'POST',
      headers,
      body: JSON.stringify({ events: [one] }),
    });
    if (!answer.ok) throw new Error(await answer.text());
    acknowledged.push(one.id);
  };
  await hand(opening('one'));
  const state = { open: true, entered: 0 };
  const entering = (async () => {
    for (; state.open; state.entered++) {
      if (state.entered % 10 === 0) await hand(await photoAct(address, state.entered));
      else await hand(finding('one', `sign-${state.entered}`, 'splat'));
    }
  })();
  return {
    acknowledged: acknowledged as readonly string[],
    more: async (count: number) => {
      const wanted = state.entered + count;
      while (state.entered < wanted) await new Promise((resolve) => setTimeout(resolve, 5));
    },
    end: async () => {
      state.open = false;
      await entering;
    },
  };
}

async function photoAct(address: string, n: number): Promise<DraftEvent> {
  const bytes = await gradient(40 + (n % 200), 40 + Math.floor(n / 200))
    .jpeg()
    .toBuffer();
  const sha = sha256(bytes);
  const put = await fetch(`${address}api/photos/${sha}`, {
    method: 'PUT',
    headers,
    body: new Uint8Array(bytes),
  });
  if (!put.ok) throw new Error(await put.text());
  const facts = (await put.json()) as { widthPx: number; heightPx: number };
  const id = randomUUID();
  const { widthPx, heightPx } = facts;
  const to = {
    id,
    sha256: sha,
    mediaType: 'image/jpeg',
    name: 'a.jpg',
    bytes: bytes.length,
    widthPx,
    heightPx,
  };
  return act('one', 'photo-added', [{ path: ['photos', id], to }]);
}

/** Runs the terminal program as a process; a number at the end is the milliseconds after which it is killed. */
async function run(
  ...words: (string | number)[]
): Promise<{ code: number | null; out: string; err: string }> {
  const killAfter = typeof words.at(-1) === 'number' ? Number(words.pop()) : undefined;
  const child = spawn(process.execPath, ['bin/underside.mjs', ...words.map(String)], { cwd: root });
  const said = { out: '', err: '' };
  child.stdout.on('data', (chunk) => {
    said.out += chunk;
  });
  child.stderr.on('data', (chunk) => {
    said.err += chunk;
  });
  const timer = killAfter === undefined ? undefined : setTimeout(() => child.kill('SIGKILL'), killAfter);
  const code = await new Promise<number | null>((resolve) => child.once('close', resolve));
  clearTimeout(timer);
  // Lines of the builder only say that another program was being started from this folder too.
  return { code, out: said.out, err: said.err.replace(/^(Making the|Waiting for|\s+\().*\n/gm, '') };
}

function idsIn(dir: string): Set<string> {
  const log = sqliteLog(join(dir, 'record.db'), { readOnly: true });
  try {
    return new Set(log.pieces().flatMap((piece) => log.ofPiece(piece).map(({ event }) => event.id)));
  } finally {
    log.close();
  }
}
