/** One room of src/: what it may take from, and whether it is pure. */
export type Room = {
  /** Rooms it may import from. */
  takes: readonly string[];
  /** Rooms it may import only types from. */
  takesTypesOf?: readonly string[];
  /** A pure room knows no files, screen, clock, chance or locale, and only the packages named here. */
  pure: false | { packages: readonly string[] };
};

const trade = ['ground', 'units', 'piece'];
const pureRooms = [
  ...trade,
  'drawing',
  'knowledge',
  'inference',
  'evidence',
  'summation',
  'calibration',
  'weighing',
  'learning',
  'wood',
  'sets',
  'dating',
  'photo',
  'wear',
  'provenance',
  'engagement',
  'worth',
  'findings',
  'calculations',
  'interchange',
];

/** The one table of allowed arrows between the rooms. An arrow not in it is a fault; so is a room without files. */
export const rooms: Readonly<Record<string, Room>> = {
  ground: { takes: [], pure: { packages: [] } },
  units: { takes: [], pure: { packages: ['zod'] } },
  piece: { takes: ['ground', 'units'], pure: { packages: ['zod'] } },
  knowledge: { takes: trade, pure: { packages: ['zod', 'yaml'] } },
  inference: { takes: ['ground'], pure: { packages: ['zod'] } },
  drawing: { takes: [...trade, 'knowledge'], pure: { packages: [] } },
  evidence: { takes: [...trade, 'knowledge'], pure: { packages: ['zod'] } },
  summation: { takes: [...trade, 'knowledge', 'evidence'], pure: { packages: [] } },
  calibration: { takes: ['ground'], pure: { packages: [] } },
  weighing: {
    takes: [...trade, 'knowledge', 'evidence', 'summation', 'calibration'],
    pure: { packages: ['zod'] },
  },
  learning: {
    takes: [...trade, 'knowledge', 'evidence', 'summation', 'calibration'],
    pure: { packages: ['zod'] },
  },
  wood: { takes: [...trade, 'knowledge'], pure: { packages: [] } },
  sets: { takes: trade, pure: { packages: ['ml-matrix'] } },
  dating: { takes: [...trade, 'knowledge'], pure: { packages: [] } },
  photo: { takes: trade, pure: { packages: ['ml-matrix', 'fft.js', 'exifreader'] } },
  wear: { takes: [...trade, 'knowledge', 'drawing'], pure: { packages: [] } },
  provenance: { takes: trade, pure: { packages: [] } },
  engagement: { takes: trade, pure: { packages: [] } },
  worth: { takes: [...trade, 'sets'], pure: { packages: ['fraction.js', 'yalps'] } },
  findings: { takes: [...trade, 'knowledge', 'wear'], pure: { packages: ['zod'] } },
  calculations: {
    takes: pureRooms.filter((room) => room !== 'calculations' && room !== 'interchange'),
    pure: { packages: ['zod'] },
  },
  interchange: {
    takes: [...trade, 'knowledge', 'drawing', 'provenance', 'evidence', 'weighing'],
    pure: { packages: [] },
  },
  opinion: { takes: pureRooms, pure: false },
  record: { takes: [...pureRooms, 'opinion'], pure: false },
  server: { takes: [...pureRooms, 'opinion', 'record'], pure: false },
  cli: { takes: [...pureRooms, 'opinion', 'record'], pure: false },
  web: { takes: pureRooms, takesTypesOf: ['opinion', 'server'], pure: false },
};

/** Files that stand in a pure room but read the disk for it; nothing pure may import them. */
export const readers: readonly string[] = ['src/knowledge/readKnowledge.ts'];

/** Tests and what only tests use: free to import what they need. */
export function isForTests(path: string): boolean {
  return /\.test\.tsx?$/.test(path) || path.includes('/testing/');
}
