import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { pureFolders } from './lint/roomRules.ts';
import { rooms } from './lint/rooms.ts';

/** Kinds of test with a folder of their own; all others are unit tests, wherever they stand. */
const apart = ['architecture', 'contract', 'http', 'faults', 'browser', 'nightly'];
/** No module keeps state (test/architecture/roomFaults.ts), so that tests can share one loading of the code; faults alone are planted in a process of their own. */
const pure = pureFolders(rooms).map((folder) => `${folder}/**/*.test.ts`);
const never = ['**/node_modules/**', 'dist/**', '.cache/**'];

export default defineConfig({
  test: {
    // As many files at once as there are cores; left to itself vitest keeps one core back, which of two is half.
    maxWorkers: availableParallelism(),
    projects: [
      {
        test: {
          name: 'unit',
          isolate: false,
          include: ['src/**/*.test.{ts,tsx}', 'scripts/**/*.test.{ts,mjs}', 'test/**/*.test.{ts,tsx}'],
          exclude: [...never, ...pure, ...apart.map((kind) => `test/${kind}/**`)],
          testTimeout: 20_000,
        },
      },
      {
        test: {
          name: 'pure',
          include: pure,
          exclude: never,
          isolate: false,
          testTimeout: 20_000,
        },
      },
      {
        test: {
          name: 'architecture',
          include: ['test/architecture/**/*.test.ts'],
          exclude: never,
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'contract',
          isolate: false,
          include: ['test/contract/**/*.test.ts'],
          exclude: never,
          testTimeout: 20_000,
        },
      },
      {
        test: {
          name: 'http',
          isolate: false,
          include: ['test/http/**/*.test.ts'],
          exclude: never,
          testTimeout: 30_000,
          hookTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'faults',
          include: ['test/faults/**/*.test.ts'],
          exclude: never,
          testTimeout: 120_000,
          hookTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'browser',
          isolate: false,
          include: ['test/browser/**/*.test.ts'],
          exclude: never,
          // After the others and never more than a few at once: each file has a server and a browser of its own.
          maxWorkers: Math.min(availableParallelism(), 4),
          sequence: { groupOrder: 1 },
          // A headless browser was once seen to stop drawing, so that a click waited half a minute for a still button. Only such
          // a wait is tried once more, and the report says so; what is wrong on a page fails at once.
          retry: { count: 1, condition: /^locator\.\w+: Timeout \d+ms exceeded/ },
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        // Long proofs: no part of `npm test`, run by `npm run test:nightly`.
        test: {
          name: 'nightly',
          include: ['test/nightly/**/*.test.ts'],
          exclude: never,
          fileParallelism: false,
          // On a busy machine a hundred kills take many times what they take on a quiet one.
          testTimeout: 7_200_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
