import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../..', import.meta.url));

/** A really started program on a folder of its own. */
export type TestServer = {
  /** With a slash at the end. */
  address: string;
  dataDir: string;
  /** Ends it and removes its folder. */
  stop: () => Promise<void>;
};

/**
 * Starts the program as `npm start` does, on a free port and an empty folder.
 *
 * @throws with what it printed, if it does not answer
 */
export async function startServer(): Promise<TestServer> {
  const dataDir = await mkdtemp(join(tmpdir(), 'underside-test-'));
  const child = spawn(process.execPath, ['bin/start.mjs', '--data', dataDir, '--port', '0', '--no-open'], {
    cwd: root,
  });
  const ended = new Promise<void>((resolve) => child.once('close', () => resolve()));
  const address = await new Promise<string>((resolve, reject) => {
    let printed = '';
    const listen = (chunk: Buffer) => {
      printed += chunk;
      const found = /open at (http:\S+)/.exec(printed)?.[1];
      if (found !== undefined) resolve(found);
    };
    child.stdout.on('data', listen);
    child.stderr.on('data', listen);
    child.once('close', (code) => reject(new Error(`The program ended with ${code}:\n${printed}`)));
  });
  const stop = async () => {
    child.kill('SIGTERM');
    await ended;
    await rm(dataDir, { recursive: true, force: true });
  };
  return { address, dataDir, stop };
}
