/**
 * Mutation testing (`npm run test:mutation`): each line of the files below is made to lie in turn, and a test must
 * notice: asked within a test, for what a test file does while it loads notices none. Long; for one file `npm run test:mutation -- --mutate src/record/chain.ts`. Measured scores: docs/testing.md.
 */

/** What is told from the sums: weights, what would change the answer, contradictions, how firm it stands, its words. */
const told = [
  'src/weighing/{weights,logOdds,hardLimit,reasons,reasonGroups,sharedCauses,wouldChange,turnedLooks}.ts',
  'src/weighing/{contradictions,explanations,contradictionBelow,conflict,firmness,sensitivity,bindingLooks,highestDensity}.ts',
  'src/weighing/{probabilityWords,verbalScale,standing,reasonWords,oddsInWords,turnedByShop}.ts',
  'src/weighing/{demonstratedWords,startingOddsEffect,weighCase}.ts',
  'src/calibration/{demonstratedRatio,ratioCalibration}.ts',
  'src/summation/shopPosterior.ts',
  'src/opinion/wording.ts',
  'src/web/readings/speaksFor.ts',
];

/** What keeps the record: its text and hashes, which acts are let in, what they come to, undo and redo. */
const record = [
  'src/record/{canonicalJson,chain,checkAct,adoptActs,pieceState,readDrafts,store,memoryLog,besideActs}.ts',
  'src/record/{verify,verifyStore,verifyIssued,verifyReport}.ts',
  'src/piece/{fold,event}.ts',
];

/** @type {import('@stryker-mutator/api/core').PartialStrykerOptions} */
export default {
  mutate: [...record, ...told],
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: 'vitest.mutation.config.ts', related: true },
  coverageAnalysis: 'perTest',
  // What is made once while a file loads can't be tried mutant by mutant without loading all of it again, which takes
  // seconds for each: only asked for by MUTATION_STATIC=yes, for files that are nothing else (src/piece/event.ts).
  ignoreStatic: process.env.MUTATION_STATIC === undefined,
  concurrency: 2,
  timeoutMS: 30_000,
  reporters: ['clear-text', 'progress', 'json'],
  clearTextReporter: { logTests: false, reportTests: false },
  jsonReporter: { fileName: '.cache/mutation.json' },
  tempDirName: '.cache/mutation',
  // The settings of the compiler hold in the copy as they stand; rewriting them asks for an older compiler.
  tsconfigFile: 'none.json',
  ignorePatterns: ['dist', '.cache', 'docs/pictures', 'bench'],
  thresholds: { high: 95, low: 90, break: 90 },
  allowEmpty: false,
};
