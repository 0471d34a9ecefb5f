import { randomUUID } from 'node:crypto';
import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { compileKnowledge } from '../../src/knowledge/compileKnowledge.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { setIssued } from '../../src/opinion/setIssued.ts';
import { photoPaths } from '../../src/record/photoPaths.ts';
import type { PhotoFolder } from '../../src/record/photos.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { createStore } from '../../src/record/store.ts';
import type { MakeRevision } from '../../src/server/askOpinion.ts';
import { type IssueParts, issueRevision } from '../../src/server/issueRevision.ts';
import { soundKnowledge } from '../architecture/soundKnowledge.ts';
import { act, finding, opening } from './drafts.ts';
import { gradient, sha256 } from './pictures.ts';
import { temporaryFolder } from './temporaryFolder.ts';

/** The small knowledge of the tests, compiled. */
export const knowledgeOfTests = compileKnowledge(soundKnowledge).knowledge as Knowledge;

/** Makes the files of a revision in this process, by the small knowledge of the tests. */
export const makeRevisionHere: MakeRevision = ({ piece, ...of }, onStep) =>
  setIssued(
    { ...of, piece, knowledge: knowledgeOfTests, version: '0.0.0-test', draws: 10, plates: [] },
    (step, done, total) => onStep({ step, done, total }),
  );

/** What was concluded, as an act. */
export const concluded = (piece: string) =>
  act(piece, 'opinion-changed', [
    { path: ['opinion', 'reading'], to: 'later-machine-copy' },
    { path: ['opinion', 'conclusion'], to: 'A side chair made by machine.' },
    { path: ['opinion', 'reasons'], to: 'Its stretchers.' },
    { path: ['opinion', 'departure'], to: 'The figures know few signs here.' },
  ]);

/** A data folder with a piece, its photo, acts of two devices, and one signed revision; the record is left open. */
export async function signedRecord() {
  const dir = await temporaryFolder();
  const log = sqliteLog(join(dir, 'record.db'));
  const store = createStore(log);
  const bytes = await gradient().jpeg().toBuffer();
  const sha = sha256(bytes);
  const path = photoPaths(dir).original(sha);
  await mkdir(dirname(path), { recursive: true });
  await writeFile(path, bytes);
  const photo = {
    id: 'p1',
    sha256: sha,
    mediaType: 'image/jpeg',
    name: 'a.jpg',
    bytes: bytes.length,
    widthPx: 320,
    heightPx: 200,
  };
  store.append([
    opening('one'),
    finding('one', 'a', 'splat'),
    finding('one', 'b', 'splat', { device: 'laptop' }),
    act('one', 'photo-added', [{ path: ['photos', 'p1'], to: photo }]),
    concluded('one'),
  ]);
  const photos = {
    original: async (asked: string) => (asked === sha ? { path, mediaType: 'image/jpeg' } : undefined),
    shown: async () => undefined,
  } as unknown as PhotoFolder;
  const parts: IssueParts = {
    store,
    photos,
    dataDir: dir,
    makeRevision: makeRevisionHere,
    version: '0.0.0-test',
    yearNow: () => 2026,
  };
  const sign = async (id: string = randomUUID()) => {
    const view = store.piece('one');
    if (view === undefined) throw new Error('no piece');
    const request = {
      id,
      piece: 'one',
      who: 'P',
      device: 'tablet-1',
      at: '2026-11-25T11:00:00Z',
      by: 'Perrin Halloway (invented)',
      on: '2026-11-25',
      seq: view.seq,
    };
    return issueRevision(parts, view, request, () => {});
  };
  /** Begins the next revision, with something new in it. */
  const begin = () => {
    store.append([
      act('one', 'revision-begun', [
        { path: ['opinion', 'status'], to: 'draft' },
        { path: ['opinion', 'isNew'], to: 'A stretcher was looked at again.' },
        { path: ['opinion', 'why'], to: 'A second visit.' },
      ]),
      finding('one', 'c', 'splat'),
    ]);
  };
  return { dir, log, store, parts, sign, begin, photoPath: path, pdf: await sign() };
}
