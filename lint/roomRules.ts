import { type Room, readers } from './rooms.ts';

type Table = Readonly<Record<string, Room>>;

const forTests = ['!**/*.test.ts', '!**/*.test.tsx', '!**/testing/**'];

/** What runs only on a machine with files: no pure room takes it. */
const machine = [
  'node:*',
  'node:*/**',
  'fs',
  'path',
  'os',
  'crypto',
  'worker_threads',
  'child_process',
  '**/readKnowledge.ts',
];

/** Names that a browser, a machine or a locale gives: no pure room says them. */
const outside = [
  ...['Intl', 'globalThis', 'process', 'window', 'document', 'navigator', 'self', 'fetch', 'performance'],
  ...['crypto', 'console', 'setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask', 'localStorage'],
  ...['indexedDB', 'Buffer', 'require', 'URL', 'Temporal', 'WeakRef', 'FinalizationRegistry'],
];

/** The rooms that a room may not take from, by the table. */
export function forbiddenRooms(name: string, rooms: Table): string[] {
  const room = rooms[name];
  if (room === undefined) throw new RangeError(`There is no room ${name} in the table.`);
  const allowed = [name, ...room.takes, ...(room.takesTypesOf ?? [])];
  return Object.keys(rooms).filter((other) => !allowed.includes(other));
}

/** The pure rooms, in the order of the table. */
export function pureRooms(rooms: Table): string[] {
  return Object.keys(rooms).filter((name) => rooms[name]?.pure !== false);
}

/**
 * The linter's settings that follow from the table of rooms: arrows, names of the machine, and the patterns of
 * lint/pureRooms.grit. lint/rooms.json holds them as text; `npx tsx scripts/roomRules.ts` writes it.
 */
export function lintRules(rooms: Table): object {
  const pure = pureRooms(rooms).map((name) => `src/${name}/**`);
  const reading = readers.map((path) => `!${path}`);
  return {
    plugins: [{ path: './lint/pureRooms.grit', includes: [...pure, ...forTests, ...reading] }],
    overrides: [
      ...Object.keys(rooms).map((name) => importRule(name, rooms)),
      {
        includes: [...pure, ...forTests, ...reading],
        linter: { rules: { style: { noRestrictedGlobals: deniedGlobals() } } },
      },
    ],
  };
}

/** The folders that the compiler checks without a machine or a browser: `include` of tsconfig.pure.json. */
export function pureFolders(rooms: Table): string[] {
  return pureRooms(rooms).map((name) => `src/${name}`);
}

function importRule(name: string, rooms: Table): object {
  return {
    includes: [`src/${name}/**`, ...forTests, ...readers.map((path) => `!${path}`)],
    linter: {
      rules: {
        style: {
          noRestrictedImports: { level: 'error', options: { patterns: patternsFor(name, rooms) } },
        },
      },
    },
  };
}

function patternsFor(name: string, rooms: Table): { group: string[]; message: string }[] {
  // Folders of the screens are called as rooms are (src/web/record): only roomFaults.ts can tell them apart.
  if (name === 'web')
    return [
      {
        group: ['node:*', 'node:*/**', 'better-sqlite3', 'sharp', '**/readKnowledge.ts'],
        message: 'The screens run in a browser: ask the server.',
      },
    ];
  const others = forbiddenRooms(name, rooms);
  const takes = rooms[name]?.takes ?? [];
  const message = `The room ${name} takes only from: ${takes.join(', ') || 'no other room'}.`;
  if (rooms[name]?.pure === false)
    return [{ group: ['../', '../../'].flatMap((up) => others.map((other) => `${up}${other}/**`)), message }];
  return [
    { group: others.map((other) => `**/${other}/**`), message },
    {
      group: machine,
      message: 'A pure room reads no files and knows no machine: take what it needs as an argument.',
    },
  ];
}

function deniedGlobals(): object {
  const message = 'A pure room knows neither machine, screen, clock nor locale: take it as an argument.';
  return {
    level: 'error',
    options: { deniedGlobals: Object.fromEntries(outside.map((name) => [name, message])) },
  };
}
