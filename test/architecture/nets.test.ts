import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Room, rooms } from './rooms.ts';

/** A faulty line planted in a room, and the rule of the linter (or code of the compiler) that must catch it. */
type Plant = { room: string; line: string; rule: string };

const pure = Object.entries(rooms).filter(([, room]) => room.pure !== false);

const lint = 'lint/';
const chance = [
  'Math.random()',
  'Date.now()',
  'new Date()',
  'Date()',
  "import('./other.ts')",
  '(1).toLocaleString()',
  "(1).toLocaleString('en')",
  "'a'.localeCompare('b')",
  "eval('1')",
].map((code) => ({ line: `export const planted = ${code};`, rule: 'plugin' }));
const globals = ['Intl', 'globalThis', 'process', 'document', 'fetch', 'performance', 'console'].map(
  (name) => ({
    line: `export const planted = ${name};`,
    rule: `${lint}style/noRestrictedGlobals`,
  }),
);

/** The rooms a room may not take from, by the table; the linter must know each of these arrows. */
function forbidden(name: string, room: Room): string[] {
  return Object.keys(rooms).filter((other) => other !== name && !room.takes.includes(other));
}

const lintPlants: Plant[] = [
  ...pure.flatMap(([room]) => [...chance, ...globals].map((plant) => ({ room, ...plant }))),
  ...pure.flatMap(([name, room]) =>
    forbidden(name, room).map((other) => ({
      room: name,
      line: `import '../${other}/planted.ts';`,
      rule: `${lint}style/noRestrictedImports`,
    })),
  ),
  ...['opinion', 'record', 'server', 'cli'].flatMap((name) =>
    forbidden(name, rooms[name] as Room).map((other) => ({
      room: name,
      line: `import '../${other}/planted.ts';`,
      rule: `${lint}style/noRestrictedImports`,
    })),
  ),
  ...pure.map(([room]) => ({
    room,
    line: "import 'node:fs';",
    rule: `${lint}style/noRestrictedImports`,
  })),
  ...['node:fs', 'better-sqlite3', '../knowledge/readKnowledge.ts'].map((from) => ({
    room: 'web',
    line: `import '${from}';`,
    rule: `${lint}style/noRestrictedImports`,
  })),
  { room: 'web', line: "export * from './other.ts';", rule: `${lint}performance/noBarrelFile` },
  { room: 'record', line: "import './planted-circle.ts';", rule: `${lint}suspicious/noImportCycles` },
];

const compilerPlants: Plant[] = pure.flatMap(([room]) =>
  [
    ['fetch', 'TS2304'],
    ['document', 'TS2584'],
    ['process', 'TS2591'],
    ['console', 'TS2584'],
    ['setTimeout', 'TS2304'],
    ['localStorage', 'TS2304'],
    ['URL', 'TS2304'],
    ['crypto', 'TS2304'],
    ['performance', 'TS2304'],
  ].map(([name, rule]) => ({ room, line: `export const planted = ${name};`, rule: rule as string })),
);

let home: string;
/** Where each plant stands in the planted house. */
const placeOf = (plant: Plant, index: number) => `src/${plant.room}/planted${index}.ts`;

beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'underside-nets-'));
  const settings = JSON.parse(await readFile('biome.json', 'utf8'));
  delete settings.$schema;
  // The planted house is no working copy, so that there is no ignore file to follow.
  settings.vcs = { enabled: false };
  await writeFile(join(home, 'biome.json'), JSON.stringify(settings));
  for (const name of ['tsconfig.json', 'tsconfig.pure.json', 'lint', 'package.json'])
    await cp(name, join(home, name), { recursive: true });
  await symlink(resolve('node_modules'), join(home, 'node_modules'));
});
afterAll(() => rm(home, { recursive: true, force: true }));

async function write(path: string, text: string): Promise<void> {
  await mkdir(dirname(join(home, path)), { recursive: true });
  await writeFile(join(home, path), text);
}

function run(command: string, ...words: string[]): Promise<string> {
  return new Promise((done) => {
    const options = { cwd: home, maxBuffer: 64 * 1024 * 1024 };
    execFile(resolve('node_modules/.bin', command), words, options, (_, out, err) => done(out + err));
  });
}

describe('the linter', () => {
  let reports: string;
  beforeAll(async () => {
    for (const [index, plant] of lintPlants.entries())
      await write(placeOf(plant, index), `export const before = 1;\n${plant.line}\n`);
    await write('src/record/planted-circle.ts', `import './planted${lintPlants.length - 1}.ts';\n`);
    // What tests may do, pure code may not: the nets must leave tests alone.
    await write('src/evidence/planted.test.ts', 'export const seed = Math.random();\n');
    await write('src/evidence/sound.ts', "export const day = new Date('2020-01-01');\n");
    reports = await run('biome', 'lint', '--reporter=github', '--max-diagnostics=none', 'src');
  });

  test.each(lintPlants.map((plant, index) => ({ ...plant, path: placeOf(plant, index) })))(
    '$rule catches in $room: $line',
    ({ path, rule }) => {
      const caught = reports
        .split('\n')
        .filter((line) => line.startsWith('::error') && line.includes(`${path},line=2,`));
      expect(caught.map((line) => /title=([^,]*)/.exec(line)?.[1])).toContain(rule);
    },
  );

  test('and leaves tests and sound code alone', () => {
    expect(reports).not.toContain('planted.test.ts');
    expect(reports).not.toContain('sound.ts');
  });
});

describe('the compiler without a machine', () => {
  let reports: string;
  beforeAll(async () => {
    await rm(join(home, 'src'), { recursive: true, force: true });
    for (const [index, plant] of compilerPlants.entries())
      await write(placeOf(plant, index), `export const before = 1;\n${plant.line}\n`);
    await write('src/evidence/planted.test.ts', 'export const there = process;\n');
    await write('src/evidence/sound.ts', "import { z } from 'zod';\nexport const s = z.string();\n");
    reports = await run('tsc', '-p', 'tsconfig.pure.json', '--pretty', 'false');
  });

  test.each(compilerPlants.map((plant, index) => ({ ...plant, path: placeOf(plant, index) })))(
    '$rule catches in $room: $line',
    ({ path, rule }) => {
      const caught = reports.split('\n').filter((line) => line.startsWith(`${path}(2,`));
      expect(caught.join('\n')).toContain(rule);
    },
  );

  test('and leaves tests and sound code alone', () => {
    expect(reports).not.toContain('planted.test.ts');
    expect(reports).not.toContain('sound.ts');
  });
});

test('the compiler’s net covers every pure room and no other', async () => {
  const settings = JSON.parse(await readFile('tsconfig.pure.json', 'utf8'));
  expect([...settings.include].sort()).toEqual(pure.map(([room]) => `src/${room}`).sort());
});
