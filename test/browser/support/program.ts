import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { openBrowser } from './openBrowser.ts';
import { startServer, type TestServer } from './startServer.ts';

/** The program and a browser, open while the tests of a file run. */
export type Program = { server: TestServer; browser: Browser };

/**
 * Opens the program and a browser before the tests of a file and closes both after them.
 *
 * @param more  what else has to be done once they are open
 * @returns filled before the first test runs
 */
export function openProgram(more?: (program: Program) => Promise<void>): Program {
  const program = {} as Program;
  beforeAll(async () => {
    [program.server, program.browser] = await Promise.all([startServer(), openBrowser()]);
    await more?.(program);
  }, 240_000);
  afterAll(async () => {
    await program.browser?.close();
    await program.server?.stop();
  });
  return program;
}
