/**
 * `npm test`: sets up all that the tests need, then runs the checks and every test. With words after `--` it runs
 * only the tests whose path has them: `npm test -- test/http`. `npm run test:nightly` runs the long proofs of
 * test/nightly/ instead, and nothing else.
 */
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from './build.mjs';
import { findChromium } from './findChromium.mjs';
import { findOtherNode } from './findOtherNode.mjs';
import { installPackages, whyInstall } from './installPackages.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const nightly = process.argv.includes('--nightly');
const only = process.argv.slice(2).filter((word) => word !== '--nightly');

async function main() {
  const ready = await setUp();
  if (typeof ready === 'string') {
    console.error(ready);
    console.log('tests: 0 passed, 1 failed');
    return 1;
  }
  const checks = nightly || only.length > 0 ? [] : await runChecks();
  const runs = plannedRuns(ready.otherNode);
  const totals = { passed: 0, failed: 0, ok: true };
  for (const { words, node } of runs) {
    const run = await runTests(words, node);
    totals.passed += run.passed;
    totals.failed += run.failed;
    totals.ok &&= run.ok;
  }
  const failedChecks = checks.filter((check) => !check.ok);
  if (checks.length > 0)
    console.log(
      `checks: ${checks.length - failedChecks.length} passed, ${failedChecks.length} failed${failedChecks.map((one) => ` (${one.name})`).join('')}`,
    );
  console.log(`tests: ${totals.passed} passed, ${totals.failed} failed`);
  return totals.ok && totals.failed === 0 && totals.passed > 0 && failedChecks.length === 0 ? 0 : 1;
}

/** The projects of the ordinary run, but for the browser. */
const projects = ['architecture', 'contract', 'http', 'faults', 'pure', 'unit'];

/** The tests of what the record is kept with: they run once more over the SQLite of a newer Node. */
const ofTheRecord = [
  'contract/eventLog',
  'contract/recordStore',
  'contract/recordVectors',
  'contract/sqlite',
  'faults/changedBytes',
  'faults/cutWal',
  'faults/dataFolder',
  'faults/fullDisk',
  'faults/killNine',
  'faults/olderRecord',
  'faults/readOnly',
  'faults/oneBadPiece',
  'faults/verifyRecord',
].map((name) => `test/${name}`);

/** Each run of vitest; the browser by itself, so that its waits are not stretched by reckoning. */
function plannedRuns(otherNode) {
  if (nightly) return [{ words: ['--project=nightly', ...only] }];
  if (only.length > 0) return [{ words: ['--project=!nightly', ...only] }];
  return [
    { words: projects.map((name) => `--project=${name}`) },
    ...(otherNode === undefined ? [] : [{ words: ofTheRecord, node: otherNode }]),
    { words: ['--project=browser'] },
  ];
}

/** Packages, dist/, a browser and a newer Node. @returns what was found, or a sentence when one of them can't be had */
async function setUp() {
  const why = whyInstall(root, { withTools: true });
  if (why !== undefined) {
    console.log(why);
    const fault = await installPackages(root, { withTools: true });
    if (fault !== undefined) return fault;
  }
  const { faults } = await build(console.log);
  if (faults.length > 0) return faults.join('\n');
  try {
    const { executable } = await findChromium(process.env);
    console.log(`The browser for the tests is ${executable}`);
    const otherNode = nightly || only.length > 0 ? undefined : await findOtherNode(process.env);
    if (otherNode !== undefined) console.log(`The record is tested over the SQLite of ${otherNode} too`);
    return { otherNode };
  } catch (error) {
    return error.message;
  }
}

/** All checks at once; what each said is told whole when it ends. */
function runChecks() {
  return Promise.all(
    ['types', 'lint', 'knowledge'].map(async (name) => {
      const said = [];
      const code = await run('npm', ['run', '--silent', name], { hear: (chunk) => said.push(chunk) });
      console.log(`\nChecking ${name} …\n${Buffer.concat(said)}`);
      return { name, ok: code === 0 };
    }),
  );
}

/** One run of the tests, on this Node or another; a run that left no count behind has failed. */
async function runTests(args, node = process.execPath) {
  const report = join(root, '.cache', 'tests.json');
  mkdirSync(join(root, '.cache'), { recursive: true });
  rmSync(report, { force: true });
  const code = await run(node, [
    join(root, 'node_modules', 'vitest', 'vitest.mjs'),
    'run',
    ...args,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ]);
  try {
    const { numPassedTests, numFailedTests, numFailedTestSuites } = JSON.parse(readFileSync(report, 'utf8'));
    const failed = numFailedTests > 0 ? numFailedTests : numFailedTestSuites;
    return { passed: numPassedTests, failed: failed > 0 || code === 0 ? failed : 1, ok: code === 0 };
  } catch {
    return { passed: 0, failed: 1, ok: false };
  }
}

/** @returns its exit code; what it says goes to the terminal, or to `hear` */
function run(command, args, { hear } = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      cwd: root,
      stdio: hear === undefined ? 'inherit' : ['ignore', 'pipe', 'pipe'],
      shell: command === 'npm' && process.platform === 'win32',
    });
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.once('error', () => resolve(-1));
    child.once('close', (code) => resolve(code ?? -1));
  });
}

process.exitCode = await main();
