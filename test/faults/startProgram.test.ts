import { stat, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openSqlite } from '../../src/record/sqlite/openSqlite.ts';
import { startServer } from '../browser/support/startServer.ts';
import { runStart } from '../kits/runStart.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

describe('npm start', () => {
  it('opens on an empty folder, shows the worked examples, and ends in order', async () => {
    const server = await startServer();
    const { pieces } = (await (await fetch(`${server.address}api/pieces`)).json()) as {
      pieces: { id: string }[];
    };
    expect(pieces.map((piece) => piece.id)).toEqual(['example-armchair', 'example-side-chair']);
    await server.stop();
    expect(server.printed()).not.toContain('Warning');
  });

  it('makes nothing anew when it starts again (bench/startAgain.ts takes the time)', async () => {
    const dir = await temporaryFolder();
    const first = await startServer(dir);
    await first.stop();
    const made = async () => (await stat(join('dist', 'server.js'))).mtimeMs;
    const before = await made();
    const again = await startServer(dir);
    await again.stop();
    expect(again.printed()).not.toContain('Making');
    expect(await made()).toBe(before);
  });

  it('says in one sentence that the port is taken', async () => {
    const other = createServer();
    const port = await new Promise<number>((resolve) =>
      other.listen(0, '127.0.0.1', () => resolve((other.address() as { port: number }).port)),
    );
    onTestFinished(() => {
      other.close();
    });
    const { code, printed } = await runStart('--data', await temporaryFolder(), '--port', String(port));
    expect(printed).toBe(
      `Port ${port} is taken by another program: choose another with --port, or --port 0 for any that is free.`,
    );
    expect(code).toBe(1);
  });

  it('starts on a folder whose last program was killed', async () => {
    const dir = await temporaryFolder();
    const first = await startServer(dir);
    await first.kill();
    const second = await startServer(dir);
    await second.stop();
    expect(second.printed()).toContain('Underside is open at');
  });

  it('says in one sentence that the record is of a newer program', async () => {
    const dir = await temporaryFolder();
    const database = openSqlite(join(dir, 'record.db'));
    database.pragma('user_version = 7');
    database.close();
    const { code, printed } = await runStart('--data', dir, '--port', '0');
    expect(code).toBe(1);
    expect(printed).toMatch(/^The record .* was written by a newer Underside .*\.$/);
  });

  it('says in one sentence that the folder cannot be written', async () => {
    const file = join(await temporaryFolder(), 'file');
    await writeFile(file, '');
    const { code, printed } = await runStart('--data', join(file, 'below'), '--port', '0');
    expect(code).toBe(1);
    expect(printed).toMatch(
      /^The folder .* cannot be written: choose another with --data, or mend its permissions\.$/,
    );
  });

  it.each([
    [['--port', 'many'], '--port needs a number'],
    [['--port', '70000'], '--port needs a number'],
    [['--data', ''], '--data needs the name of a folder'],
    [['--colour', 'red'], '--colour'],
  ])('refuses %j', async (args, words) => {
    const { code, printed } = await runStart(...args);
    expect(code).toBe(1);
    expect(printed).toContain(words);
  });
});
