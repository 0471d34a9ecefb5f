import type { Hono } from 'hono';
import { runById } from '../../src/calculations/runById.ts';
import { compileKnowledge } from '../../src/knowledge/compileKnowledge.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { reckonSettled } from '../../src/learning/runningScore.ts';
import { fieldGuide } from '../../src/opinion/fieldGuide.ts';
import { makeFieldGuide } from '../../src/opinion/makeFieldGuide.ts';
import type { Json } from '../../src/piece/event.ts';
import { makeBackup } from '../../src/record/backup/makeBackup.ts';
import type { BuiltInPhoto } from '../../src/record/builtInPhoto.ts';
import { memoryLog } from '../../src/record/memoryLog.ts';
import { openOwnKnowledge } from '../../src/record/ownKnowledge.ts';
import { openPhotos, photoLimits } from '../../src/record/photos.ts';
import { openSettledLearning, type SettledLearning } from '../../src/record/settledLearning.ts';
import { createStore, type RecordStore } from '../../src/record/store.ts';
import { createApp, type ServerParts } from '../../src/server/app.ts';
import { openBackupKeeper } from '../../src/server/backup/backupKeeper.ts';
import { homeDoor } from '../../src/server/door/homeDoor.ts';
import { openJobs } from '../../src/server/jobs.ts';
import { settledPieces, tellingOfSettled } from '../../src/server/settledPieces.ts';
import { staticFiles } from '../../src/server/staticFiles.ts';
import { soundKnowledge } from '../architecture/soundKnowledge.ts';
import { temporaryFolder } from './temporaryFolder.ts';

/** The server in this process, on a record in memory. */
export type TestApp = {
  /** As it is answered at the computer itself. */
  app: Hono;
  /** What lies behind the doors. */
  house: Hono;
  store: RecordStore;
  get: Ask;
  post: (path: string, body: unknown, headers?: Headers) => Promise<Response>;
  faults: unknown[];
};
type Ask = (path: string, headers?: Headers) => Promise<Response>;
type Headers = Record<string, string>;

/** What the test wants other than usual. */
export type TestWishes = {
  bases?: Map<string, Json>;
  builtIn?: Map<string, BuiltInPhoto>;
  webDir?: string;
  parts?: Partial<ServerParts>;
};

export async function testApp({ bases, builtIn, webDir, parts }: TestWishes = {}): Promise<TestApp> {
  const learnt: { learning?: SettledLearning } = {};
  const store = tellingOfSettled(createStore(memoryLog(), bases), () => learnt.learning?.look());
  const faults: unknown[] = [];
  const dir = await temporaryFolder();
  const compiled = compileKnowledge(soundKnowledge).knowledge as Knowledge;
  const entries = openOwnKnowledge(`${dir}/own`, { knowledge: compiled, files: () => soundKnowledge }, () =>
    learnt.learning?.look(),
  );
  const learning = openSettledLearning(
    `${dir}/own/settled.json`,
    { base: entries.knowledge, settled: () => settledPieces(store) },
    () => {},
  );
  learnt.learning = learning;
  const own = { ...entries, knowledge: learning.knowledge };
  const jobs = openJobs();
  const house = createApp({
    store,
    photos: await openPhotos(
      dir,
      { ...photoLimits, heicWorker: new URL('file:///none') },
      builtIn === undefined ? {} : { builtIn },
    ),
    own,
    learning,
    reckon: async ({ cases, knowledge }) => reckonSettled(cases, knowledge, 2026),
    calculate: async ({ id, input, yearNow }) => runById(id, input, { knowledge: own.knowledge(), yearNow }),
    setGuide: async (of) => {
      const guide = fieldGuide(of, own.knowledge());
      return guide && makeFieldGuide(guide);
    },
    setOpinion: async () => new TextEncoder().encode('%PDF-'),
    makeRevision: async () => ({ files: new Map(), contents: '', knowledgeVersion: '' }),
    dataDir: dir,
    version: '0.0.0-test',
    jobs,
    pieceFiles: { workDir: dir, takeOut: async () => ({ ok: false, faults: [] }) },
    backups: openBackupKeeper({
      dataDir: dir,
      programVersion: '0.1.0',
      jobs,
      make: makeBackup,
      firstAct: () => undefined,
      lastWrite: () => 0,
      now: () => new Date(),
    }),
    screens: await staticFiles(webDir ?? dir),
    yearNow: () => 2026,
    tellFault: (error) => faults.push(error),
    ...parts,
  });
  const app = homeDoor(house);
  const host = 'http://127.0.0.1:4717';
  return {
    app,
    house,
    store,
    faults,
    get: async (path, headers = {}) => app.request(`${host}${path}`, { headers }),
    post: async (path, body, headers = {}) =>
      app.request(`${host}${path}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'x-underside': '1', ...headers },
        body: typeof body === 'string' ? body : JSON.stringify(body),
      }),
  };
}
