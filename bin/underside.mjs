#!/usr/bin/env node
// `npx underside`: the calculations and checks from a terminal. Builds what is out of date first.
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { userDataFolder } from '../scripts/userDataFolder.mjs';

const built = fileURLToPath(new URL('../dist/cli.js', import.meta.url));
const builder = fileURLToPath(new URL('../scripts/build.mjs', import.meta.url));
const knowledge = fileURLToPath(new URL('../dist/knowledge.json', import.meta.url));
const say = (line) => process.stderr.write(`${line}\n`);

// A reader that has seen enough (`| head`) closes the pipe: that is no fault.
process.stdout.on('error', (error) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

process.exitCode = (await bringUpToDate()) ? await run() : 1;

/** False if there is nothing to run. What was built before is used where nothing new can be built. */
async function bringUpToDate() {
  if (!existsSync(builder)) return existsSync(built);
  try {
    const { build } = await import('../scripts/build.mjs');
    const { faults } = await build(say, ['programs']);
    for (const fault of faults) say(fault);
    return faults.length === 0;
  } catch (error) {
    if (existsSync(built)) return true;
    say(`The terminal program could not be built: ${error.message}. Run npm install, then npm run build.`);
    return false;
  }
}

async function refreshKnowledge() {
  if (!existsSync(builder)) return;
  try {
    const { build } = await import('../scripts/build.mjs');
    const { faults } = await build(() => {}, ['knowledge']);
    if (faults.length > 0 && existsSync(knowledge)) {
      say(
        'The knowledge files have faults, so they are used as they last were: npm run knowledge lists all faults.',
      );
    }
  } catch (error) {
    say(`The knowledge could not be brought up to date (${error.message}): it is used as it last was.`);
  }
}

async function run() {
  const { runFromTerminal } = await import('../dist/cli.js');
  const usualDataFolder = userDataFolder(process.platform, process.env);
  return runFromTerminal(process.argv.slice(2), { usualDataFolder, refreshKnowledge });
}
