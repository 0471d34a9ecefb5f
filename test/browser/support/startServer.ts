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
  /** All it printed so far. */
  printed: () => string;
  /** Ends it as if the power went. */
  kill: () => Promise<void>;
  /** Ends it in order, and removes its folder if it was made for it. */
  stop: () => Promise<void>;
};

/**
 * Starts the program as `npm start` does, on a free port and an empty folder unless told where.
 *
 * @param dataDir  a folder to start on instead; it is left where it is
 * @param port     a port to answer on instead of a free one: to come back where it was
 * @param more     further words of the command line
 * @throws with what it printed, if it does not answer
 */
export async function startServer(
  dataDir?: string,
  port = 0,
  more: readonly string[] = [],
): Promise<TestServer> {
  const folder = dataDir ?? (await mkdtemp(join(tmpdir(), 'underside-test-')));
  const child = spawn(
    process.execPath,
    ['bin/start.mjs', '--data', folder, '--port', String(port), '--no-open', ...more],
    {
      cwd: root,
    },
  );
  const ended = new Promise<void>((resolve) => child.once('close', () => resolve()));
  let printed = '';
  const address = await new Promise<string>((resolve, reject) => {
    const hear = (chunk: Buffer) => {
      printed += chunk;
      const found = /open at (http:\S+)/.exec(printed)?.[1];
      if (found !== undefined) resolve(found);
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('close', (code) => reject(new Error(`The program ended with ${code}:\n${printed}`)));
  });
  const end = async (signal: NodeJS.Signals) => {
    child.kill(signal);
    await ended;
  };
  const stop = async () => {
    await end('SIGTERM');
    if (dataDir === undefined) await rm(folder, { recursive: true, force: true });
  };
  return { address, dataDir: folder, printed: () => printed, kill: () => end('SIGKILL'), stop };
}
