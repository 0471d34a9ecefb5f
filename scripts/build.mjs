/**
 * Makes everything the program runs from into dist/: the compiled knowledge, the examples' plates, the screens,
 * the server and the terminal program. A part whose inputs have not changed since last time is left as it is.
 */
import { existsSync } from 'node:fs';
import { cp, mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { inputsHash, readStamps, withBuildLock, writeStamps } from './buildStamps.mjs';
import { makeInstallable } from './installable.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const dist = join(root, 'dist');
const scratch = join(root, '.cache', 'build');

/** The parts in the order they are made; each with the files it is made from. */
const parts = [
  {
    id: 'knowledge',
    says: 'the knowledge',
    from: ['knowledge', 'src/knowledge', 'src/piece', 'src/units'],
    make: makeKnowledge,
  },
  {
    id: 'examples',
    says: 'the plates of the worked examples',
    from: ['scripts/plates', 'examples', 'src/drawing', 'src/units'],
    make: makeExamples,
  },
  {
    id: 'web',
    says: 'the screens',
    from: ['vite.config.ts', 'src', 'package-lock.json', 'scripts/installable.mjs'],
    make: makeWeb,
  },
  {
    id: 'programs',
    says: 'the server and the terminal program',
    from: ['src', 'package-lock.json'],
    make: makePrograms,
  },
];

/**
 * Builds what is out of date.
 *
 * @param {(line: string) => void} say  called with one line for each part that is made
 * @param {string[]} [only]             ids of the parts wanted; all when left out
 * @returns {Promise<{ made: string[], faults: string[] }>} what was made, and what stood in the way (nothing when empty)
 */
export async function build(say, only) {
  return withBuildLock(root, say, async () => {
    const stamps = await readStamps(dist);
    const made = [];
    for (const part of parts.filter((one) => only === undefined || only.includes(one.id))) {
      const hash = await inputsHash(root, [...part.from, 'scripts/build.mjs']);
      if (stamps[part.id] === hash) continue;
      say(`Making ${part.says} …`);
      const faults = await part.make(say).catch((error) => [`Making ${part.says} failed: ${error.message}`]);
      if (faults.length > 0) return { made, faults };
      stamps[part.id] = hash;
      await writeStamps(dist, stamps);
      made.push(part.id);
    }
    return { made, faults: [] };
  });
}

async function makeKnowledge() {
  const { compileKnowledge } = await importSource('src/knowledge/compileKnowledge.ts');
  const { readKnowledgeFolder } = await importSource('src/knowledge/readKnowledge.ts');
  const files = await readKnowledgeFolder(join(root, 'knowledge'));
  const { knowledge, faults } = compileKnowledge(files);
  if (knowledge === undefined || faults.length > 0) {
    return [
      `The knowledge files have ${faults.length} ${faults.length === 1 ? 'fault' : 'faults'}; "npm run knowledge" lists them all:`,
      ...faults.slice(0, 10).map(faultLine),
    ];
  }
  await writeWhole(join(dist, 'knowledge.json'), JSON.stringify(knowledge));
  await writeWhole(join(dist, 'knowledge-files.json'), JSON.stringify(files));
  return [];
}

function faultLine({ file, line, entry, what, mend, example }) {
  return `  ${file}:${line} ${entry}: ${what} ${mend}${example ? ` A right one: ${example}` : ''}`;
}

async function makeExamples(say) {
  await cp(join(root, 'examples'), join(dist, 'examples'), { recursive: true });
  if (!existsSync(join(root, 'scripts/plates/main.ts'))) {
    say('  (there are no worked examples to draw plates for)');
    return [];
  }
  const { drawPlates } = await importSource('scripts/plates/main.ts');
  await drawPlates(join(dist, 'examples'));
  return [];
}

async function makeWeb() {
  const { build: viteBuild } = await import('vite');
  const fresh = join(dist, 'web.new');
  await rm(fresh, { recursive: true, force: true });
  await viteBuild({
    configFile: join(root, 'vite.config.ts'),
    root: join(root, 'src/web'),
    logLevel: 'warn',
    build: { outDir: fresh, emptyOutDir: true },
  });
  await makeInstallable(fresh, root);
  await swapFolder(fresh, join(dist, 'web'));
  return [];
}

/** Entries and the files they become; workers are files of their own because a thread starts from a file. */
const programs = {
  server: 'src/server/main.ts',
  heicWorker: 'src/record/heicWorker.ts',
  calculationWorker: 'src/server/calculationWorker.ts',
  opinionWorker: 'src/server/opinionWorker.ts',
  pieceFileWorker: 'src/server/pieceFileWorker.ts',
  learningWorker: 'src/server/learningWorker.ts',
  guideWorker: 'src/server/guideWorker.ts',
  backupWorker: 'src/server/backup/backupWorker.ts',
  cli: 'src/cli/main.ts',
};

async function makePrograms(say) {
  const entries = Object.entries(programs).filter(([, file]) => existsSync(join(root, file)));
  for (const [name, file] of Object.entries(programs))
    if (!existsSync(join(root, file))) say(`  (${file} is not there: ${name} left out)`);
  await bundle(Object.fromEntries(entries), dist, '.js');
  return [];
}

/** Bundles TypeScript entries for Node, leaving packages where npm put them. */
export async function bundle(entryPoints, outdir, extension) {
  const esbuild = await import('esbuild');
  await esbuild.build({
    absWorkingDir: root,
    entryPoints,
    outdir,
    outExtension: { '.js': extension },
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    packages: 'external',
    sourcemap: true,
    logLevel: 'warning',
  });
}

/** Imports a TypeScript file of ours, bundled on the way. */
async function importSource(file) {
  const name = file.replaceAll(/[^a-zA-Z0-9]/g, '-');
  await bundle({ [name]: file }, scratch, '.mjs');
  return import(`${pathToFileURL(join(scratch, `${name}.mjs`)).href}?${Date.now()}`);
}

/** Writes a file so that a reader never sees half of it. */
async function writeWhole(file, text) {
  await mkdir(dist, { recursive: true });
  await writeFile(`${file}.new`, text);
  await rename(`${file}.new`, file);
}

async function swapFolder(fresh, place) {
  const old = `${place}.old`;
  await rm(old, { recursive: true, force: true });
  if (existsSync(place)) await rename(place, old);
  await rename(fresh, place);
  await rm(old, { recursive: true, force: true });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { made, faults } = await build(
    console.log,
    process.argv.length > 2 ? process.argv.slice(2) : undefined,
  );
  if (faults.length > 0) {
    console.error(faults.join('\n'));
    process.exitCode = 1;
  } else if (made.length === 0) console.log('Everything is made already.');
}
