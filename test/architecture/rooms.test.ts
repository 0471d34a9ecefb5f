import { readdir, readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { type Room, rooms } from '../../lint/rooms.ts';
import { circlesOfFiles } from './circles.ts';
import { type RoomFault, roomFaults, type SourceFile } from './roomFaults.ts';

async function sourceFiles(): Promise<SourceFile[]> {
  const names = (await readdir('src', { recursive: true })).map((name) => name.replaceAll('\\', '/'));
  const code = names.filter((name) => /\.tsx?$/.test(name) && !name.endsWith('.d.ts'));
  return Promise.all(
    code.map(async (name) => ({ path: `src/${name}`, text: await readFile(`src/${name}`, 'utf8') })),
  );
}

const told = (faults: readonly RoomFault[]) =>
  faults.map((fault) => `${fault.path}:${fault.line} ${fault.rule}: ${fault.what}`);

test('the house keeps its own rules', async () => {
  const files = await sourceFiles();
  expect(files.length).toBeGreaterThan(100);
  expect(told(roomFaults(files, rooms))).toEqual([]);
});

/** Rooms that can be reached from themselves along the arrows, and arrows to rooms that are not there. */
function circles(table: Readonly<Record<string, Room>>): string[] {
  const reached = (from: string): Set<string> => {
    const found = new Set<string>();
    const follow = (room: string) => {
      for (const to of table[room]?.takes ?? []) {
        if (found.has(to)) continue;
        found.add(to);
        follow(to);
      }
    };
    follow(from);
    return found;
  };
  return Object.keys(table).flatMap((room) => {
    const all = [...reached(room)];
    return [...all.filter((to) => to === room), ...all.filter((to) => table[to] === undefined)];
  });
}

test('the arrows between the rooms do not run in a circle', () => {
  expect(circles(rooms)).toEqual([]);
  const planted = { a: { takes: ['b'], pure: false }, b: { takes: ['a'], pure: false } } as const;
  expect(circles(planted)).toEqual(['a', 'b']);
  expect(circles({ a: { takes: ['lost'], pure: false } })).toEqual(['lost']);
});

test('no file leads back to itself, by types either', async () => {
  expect(circlesOfFiles(await sourceFiles())).toEqual([]);
  const planted: SourceFile[] = [
    { path: 'src/a/one.ts', text: "import type { Two } from '../b/two.ts';\nexport type One = Two;\n" },
    { path: 'src/b/two.ts', text: "import { three } from './three.tsx';\nexport type Two = typeof three;\n" },
    {
      path: 'src/b/three.tsx',
      text: "export { type One as Three } from '../a/one.ts';\nexport const three = 3;\n",
    },
    { path: 'src/b/four.ts', text: "import { three } from './three.tsx';\n// import './four.ts';\n" },
    { path: 'src/b/self.ts', text: "import './self.ts';\n" },
    { path: 'src/b/two.test.ts', text: "import './two.ts';\nimport './two.test.ts';\n" },
  ];
  expect(circlesOfFiles(planted)).toEqual([
    ['src/a/one.ts', 'src/b/three.tsx', 'src/b/two.ts'],
    ['src/b/self.ts'],
  ]);
});

describe('planted faults are reported by name', () => {
  const small: Record<string, Room> = {
    units: { takes: [], pure: { packages: [] } },
    wood: { takes: ['units'], pure: { packages: ['zod'] } },
    office: { takes: ['wood'], takesTypesOf: ['desk'], pure: false },
    desk: { takes: ['wood'], pure: false },
  };
  const sound: SourceFile[] = [
    { path: 'src/units/length.ts', text: 'export const inch = 25.4;\n' },
    {
      path: 'src/wood/board.ts',
      text: "import { z } from 'zod';\nimport { inch } from '../units/length.ts';\n// import './nothing.ts' and let it be\nexport const b = z.number().max(inch);\n",
    },
    {
      path: 'src/office/letter.ts',
      text: "import { readFile } from 'node:fs/promises';\nimport type { D } from '../desk/top.ts';\nimport { b } from '../wood/board.ts';\nexport const l: D = [readFile, b];\n",
    },
    { path: 'src/desk/top.ts', text: 'export type D = unknown[];\n' },
    { path: 'src/wood/board.test.ts', text: "import '../office/letter.ts';\nlet free = 1;\n" },
  ];

  test('the sound house has none', () => expect(told(roomFaults(sound, small))).toEqual([]));

  const plants: [rule: string, path: string, text: string, line: number][] = [
    ['arrow', 'src/units/a.ts', "export const x = 1;\nexport { b } from '../wood/board.ts';\n", 2],
    ['arrow', 'src/wood/a.ts', "import type { D } from '../desk/top.ts';\nexport type E = D;\n", 1],
    ['arrow', 'src/wood/a.ts', "export const d = () => import('../desk/top.ts');\n", 1],
    ['arrow', 'src/office/a.ts', "import { x } from '../desk/top.ts';\nexport const y = x;\n", 1],
    ['arrow', 'src/office/a.ts', "import { type D, x } from '../desk/top.ts';\nexport const y: D = x;\n", 1],
    ['arrow', 'src/wood/deep/a.ts', "import {\n  x,\n} from '../../desk/top.ts';\nexport const y = x;\n", 1],
    ['arrow', 'src/wood/a.ts', "import '../../test/kits/x.ts';\n", 1],
    [
      'package-in-pure-room',
      'src/wood/a.ts',
      "import { join } from 'node:path';\nexport const j = join;\n",
      1,
    ],
    ['package-in-pure-room', 'src/units/a.ts', "import { z } from 'zod';\nexport const j = z;\n", 1],
    ['reader-in-pure-room', 'src/wood/a.ts', "import '../knowledge/readKnowledge.ts';\n", 1],
    [
      'import-without-ending',
      'src/wood/a.ts',
      "import { inch } from '../units/length';\nexport const i = inch;\n",
      1,
    ],
    ['room-not-in-table', 'src/attic/a.ts', 'export const x = 1;\n', 1],
    ['state-in-module', 'src/office/a.ts', '\nlet count = 0;\nexport const c = () => count++;\n', 2],
    ['state-in-module', 'src/wood/a.ts', 'export let count = 0;\n', 1],
    ['taken-apart', 'src/wood/a.ts', 'const { random } = Math;\nexport const r = random;\n', 1],
    ['taken-apart', 'src/wood/a.ts', 'const M = Math;\nexport const r = M.random();\n', 1],
  ];
  test.each(plants)('%s in %s', (rule, path, text, line) => {
    expect(roomFaults([...sound, { path, text }], small)).toMatchObject([{ rule, path, line }]);
  });

  test('a room without files, tests not counted', () => {
    const without = sound.filter((file) => file.path !== 'src/desk/top.ts');
    const onlyTest = [...without, { path: 'src/desk/top.test.ts', text: 'export {};\n' }];
    expect(roomFaults(onlyTest, small)).toMatchObject([{ rule: 'room-without-files', path: 'src/desk' }]);
  });
});
