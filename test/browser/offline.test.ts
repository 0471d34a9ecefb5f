import { rm } from 'node:fs/promises';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBrowser } from './support/openBrowser.ts';
import { startServer, type TestServer } from './support/startServer.ts';
import { walkVisitOffline } from './support/walkVisitOffline.ts';

const used = {} as { server: TestServer; browser: Browser };
beforeAll(async () => {
  [used.server, used.browser] = await Promise.all([startServer(), openBrowser()]);
});
afterAll(async () => {
  await used.browser?.close();
  await used.server?.stop();
  if (used.server !== undefined) await rm(used.server.dataDir, { recursive: true, force: true });
});

test('a visit without a network: nothing of it is lost, and the office has it once', async () => {
  await walkVisitOffline(used, { findings: 8, photos: 2 });
  expect(used.server.printed()).not.toMatch(/wrong/i);
});
