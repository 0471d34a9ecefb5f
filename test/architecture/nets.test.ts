import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { forbiddenRooms, lintRules, pureFolders, pureRooms } from '../../lint/roomRules.ts';
import { type Room, rooms } from '../../lint/rooms.ts';

/** A faulty line planted in a room, and the rule of the linter (or code of the compiler) that must catch it. */
type Plant = { room: string; line: string; rule: string };

const pure = pureRooms(rooms);
const others = Object.keys(rooms).filter((name) => !pure.includes(name));

const globalRule = 'lint/style/noRestrictedGlobals';
const importRule = 'lint/style/noRestrictedImports';

/** The first room that a room may not take from. */
function arrow(room: string): Plant {
  const other = forbiddenRooms(room, rooms)[0];
  if (other === undefined) throw new RangeError(`${room} may take from every room.`);
  return { room, line: `import '../${other}/planted.ts';`, rule: importRule };
}

/** Every pattern and name once, in one pure room; one of each kind in every other. The table does the rest. */
const lintPlants: Plant[] = [
  ...[
    'Math.random()',
    'Date.now()',
    'new Date()',
    'Date()',
    "import('./other.ts')",
    '(1).toLocaleString()',
    "(1).toLocaleString('en')",
    "'a'.localeCompare('b')",
    "eval('1')",
  ].map((code) => ({ room: 'evidence', line: `export const planted = ${code};`, rule: 'plugin' })),
  ...['Intl', 'globalThis', 'process', 'document', 'fetch', 'performance', 'console'].map((name) => ({
    room: 'evidence',
    line: `export const planted = ${name};`,
    rule: globalRule,
  })),
  ...pure.flatMap((room) => [
    { room, line: 'export const planted = Math.random();', rule: 'plugin' },
    { room, line: 'export const planted = process;', rule: globalRule },
    { room, line: "import 'node:fs';", rule: importRule },
    ...(forbiddenRooms(room, rooms).length > 0 ? [arrow(room)] : []),
  ]),
  ...others.filter((room) => room !== 'web').map(arrow),
  ...['node:fs', 'better-sqlite3', '../knowledge/readKnowledge.ts'].map((from) => ({
    room: 'web',
    line: `import '${from}';`,
    rule: importRule,
  })),
  { room: 'web', line: "export * from './other.ts';", rule: 'lint/performance/noBarrelFile' },
  { room: 'record', line: "import './planted-circle.ts';", rule: 'lint/suspicious/noImportCycles' },
];

/** Every name once in one pure room; one in every other. */
const compilerPlants: Plant[] = [
  ...[
    ['fetch', 'TS2304'],
    ['document', 'TS2584'],
    ['process', 'TS2591'],
    ['console', 'TS2584'],
    ['setTimeout', 'TS2304'],
    ['localStorage', 'TS2304'],
    ['URL', 'TS2304'],
    ['crypto', 'TS2304'],
    ['performance', 'TS2304'],
  ].map(([name, rule]) => ({
    room: 'evidence',
    line: `export const planted = ${name};`,
    rule: rule as string,
  })),
  ...pure.map((room) => ({ room, line: 'export const planted = process;', rule: 'TS2591' })),
];

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

describe('the settings', () => {
  const text = (path: string) => readFile(path, 'utf8').then(JSON.parse);

  test('in the files are those that follow from the table: else run npx tsx scripts/roomRules.ts', async () => {
    expect(await text('lint/rooms.json')).toEqual(lintRules(rooms));
    expect((await text('tsconfig.pure.json')).include).toEqual(pureFolders(rooms));
    expect((await text('biome.json')).extends).toEqual(['./lint/rooms.json']);
  });

  test('refuse each arrow that the table does not have, and no other', () => {
    const small: Record<string, Room> = {
      units: { takes: [], pure: { packages: [] } },
      wood: { takes: ['units'], pure: { packages: [] } },
      office: { takes: ['wood'], takesTypesOf: ['desk'], pure: false },
      desk: { takes: [], pure: false },
    };
    expect(Object.fromEntries(Object.keys(small).map((name) => [name, forbiddenRooms(name, small)]))).toEqual(
      {
        units: ['wood', 'office', 'desk'],
        wood: ['office', 'desk'],
        office: ['units'],
        desk: ['units', 'wood', 'office'],
      },
    );
    expect(pureFolders(small)).toEqual(['src/units', 'src/wood']);
    const written = JSON.stringify(lintRules(small));
    expect(written).toContain(
      '{"group":["**/office/**","**/desk/**"],"message":"The room wood takes only from: units."}',
    );
    expect(written).toContain(
      '{"group":["../units/**","../../units/**"],"message":"The room office takes only from: wood."}',
    );
  });
});
