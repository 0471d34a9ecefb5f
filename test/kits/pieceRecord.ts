import type { Outcome } from '../../src/ground/fault.ts';
import { compileKnowledge } from '../../src/knowledge/compileKnowledge.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { openDataFolder } from '../../src/record/openDataFolder.ts';
import { openOwnKnowledge } from '../../src/record/ownKnowledge.ts';
import { openPhotos, photoLimits } from '../../src/record/photos.ts';
import { type BroughtIn, bringInPiece } from '../../src/record/pieceFile/bringIn.ts';
import { writePieceFile } from '../../src/record/pieceFile/writePieceFile.ts';
import { createStore } from '../../src/record/store.ts';
import { soundKnowledge } from '../architecture/soundKnowledge.ts';
import { act } from './drafts.ts';
import { gradient, sha256 } from './pictures.ts';
import { temporaryFolder } from './temporaryFolder.ts';

const knowledge = compileKnowledge(soundKnowledge).knowledge as Knowledge;

/** A record on disk, with all that a piece is taken out of it and brought into it by. */
export async function pieceRecord(dataDir?: string) {
  const dir = dataDir ?? (await temporaryFolder());
  const { log, lock } = openDataFolder(dir);
  const store = createStore(log);
  const photos = await openPhotos(dir, { ...photoLimits, heicWorker: new URL('file:///none') });
  const own = openOwnKnowledge(`${dir}/own-knowledge`, { knowledge, files: () => soundKnowledge }, () => {});
  return {
    dir,
    log,
    store,
    photos,
    close: () => {
      store.close();
      lock.release();
    },
    /** Enters acts; throws why not. */
    enter(...acts: unknown[]) {
      const kept = store.append(acts);
      if (!kept.ok) throw new Error(JSON.stringify(kept.faults));
    },
    /** Takes a photo in and enters it; gives back its hash. */
    async photograph(piece: string, id: string, width = 60): Promise<string> {
      const bytes = await gradient(width, 40).jpeg().toBuffer();
      const sha = sha256(bytes);
      const put = await photos.put(
        sha,
        (async function* () {
          yield bytes;
        })(),
      );
      if (!put.ok) throw new Error(JSON.stringify(put.faults));
      const to = {
        id,
        sha256: sha,
        mediaType: 'image/jpeg',
        name: `${id}.jpg`,
        bytes: bytes.length,
        widthPx: width,
        heightPx: 40,
        caption: `Caption of ${id}`,
      };
      this.enter(act(piece, 'photo-added', [{ path: ['photos', id], to }]));
      return sha;
    },
    async takeOut(piece: string): Promise<string> {
      const to = `${await temporaryFolder()}/${piece}.zip`;
      const now = new Date('2026-11-30T12:00:00Z');
      const of = { dataDir: dir, file: `${dir}/record.db`, piece, to, knowledge };
      const out = await writePieceFile({ ...of, programVersion: '0.1.0', now });
      if (!out.ok) throw new Error(JSON.stringify(out.faults));
      return to;
    },
    async bringIn(file: string, beside = false): Promise<Outcome<BroughtIn>> {
      return bringInPiece(file, `${dir}/incoming/in`, { dataDir: dir, store, photos, own }, beside);
    },
  };
}
