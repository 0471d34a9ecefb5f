import { defineConfig } from 'vitest/config';

/**
 * The tests that mutation testing asks: those that are quick and near the code. See stryker.config.mjs. For one file fewer will do:
 * MUTATION_TESTS=src/weighing/verbalScale.test.ts; more mutants then live, never fewer.
 */
export default defineConfig({
  test: {
    include: process.env.MUTATION_TESTS?.split(',') ?? [
      'src/{calibration,evidence,opinion,piece,record,summation,weighing}/**/*.test.ts',
      'src/web/readings/**/*.test.ts',
      'test/contract/**/*.test.ts',
      'test/faults/{hostileActs,verifyRecord}.test.ts',
    ],
    exclude: ['**/node_modules/**', 'dist/**', '.cache/**'],
    testTimeout: 20_000,
  },
});
