import { readFile, writeFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { compileKnowledge } from '../../src/knowledge/compileKnowledge.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { scalePlate } from '../../src/opinion/pdf/scalePlate.ts';
import { setOpinion } from '../../src/opinion/setOpinion.ts';
import { piece as pieceSchema } from '../../src/piece/piece.ts';
import { photoPaths } from '../../src/record/photoPaths.ts';
import { openPhotos, type PhotoFolder, photoLimits } from '../../src/record/photos.ts';
import { takingTurns } from '../../src/record/turns.ts';
import { askOpinion } from '../../src/server/askOpinion.ts';
import { soundKnowledge } from '../architecture/soundKnowledge.ts';
import { gradient, sha256 } from '../kits/pictures.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

const knowledge = compileKnowledge(soundKnowledge).knowledge as Knowledge;
const openAgain = (dir: string) => openPhotos(dir, { ...photoLimits, heicWorker: new URL('file:///none') });

/** A folder with one photo taken in, and where its original and the picture made from it lie. */
async function photographed() {
  const dir = await temporaryFolder();
  const photos = await openAgain(dir);
  const bytes = await gradient().png().toBuffer();
  const sha = sha256(bytes);
  await photos.put(
    sha,
    (async function* () {
      yield bytes;
    })(),
  );
  const paths = photoPaths(dir);
  return { dir, photos, sha, original: paths.original(sha), view: paths.shown(sha, 'view') };
}

/** Changes one byte in the middle of a file. */
async function changeByte(path: string): Promise<void> {
  const bytes = await readFile(path);
  const at = Math.floor(bytes.length / 2);
  bytes[at] = (bytes[at] ?? 0) ^ 1;
  await writeFile(path, bytes);
}

/** Sets the opinion on a piece with that one photo, as the server does but in this process. */
function print(photos: PhotoFolder, sha: string): Promise<Uint8Array> {
  const piece = pieceSchema.parse({
    id: 'one',
    form: 'side-chair',
    title: 'A chair',
    plateOrder: ['p1'],
    photos: {
      p1: {
        id: 'p1',
        sha256: sha,
        mediaType: 'image/png',
        name: 'a.png',
        caption: 'The chair',
        bytes: 1,
        widthPx: 320,
        heightPx: 200,
      },
    },
  });
  const desk = {
    ask: ({ plates, ...of }: Parameters<Parameters<typeof askOpinion>[0]['ask']>[0]) =>
      setOpinion({
        piece: of.piece,
        yearNow: 2026,
        madeOn: '2026-11-30',
        plates,
        knowledge,
        version: '0',
        draws: 0,
      }),
    close: async () => {},
  };
  return askOpinion(desk, photos, () => new Date(2026, 10, 30), takingTurns(1))(piece, () => {});
}

const holds = (pdf: Uint8Array, picture: Buffer) => Buffer.from(pdf).includes(picture);

describe('a picture that was derived from a photo and changed on the disk', () => {
  it('is never printed: the plate is the right one, in the run that made it and in the next', async () => {
    const { dir, photos, sha, view } = await photographed();
    const right = await readFile(view);
    expect(
      holds(await print(photos, sha), right),
      'a plate that is right stands in the PDF byte for byte',
    ).toBe(true);
    for (const run of [photos, await openAgain(dir)]) {
      await changeByte(view);
      const changed = await readFile(view);
      const pdf = await print(run, sha);
      expect([holds(pdf, right), holds(pdf, changed)]).toEqual([true, false]);
    }
  });

  it('is not made again at every print: what was made in this run is known by its hash', async () => {
    const { dir, sha, original, view } = await photographed();
    const photos = await openAgain(dir);
    const first = await photos.printable(sha);
    await writeFile(original, (await readFile(original)).subarray(0, 100));
    expect(await photos.printable(sha)).toEqual(first);
    await changeByte(view);
    expect(await photos.printable(sha)).toMatchObject({ ok: false, faults: [{ code: 'photo.changed' }] });
  });

  it('stops the print where it is changed between the check and the reading', async () => {
    const { photos, sha, view } = await photographed();
    const picture = await photos.printable(sha);
    if (!picture.ok || picture.value === undefined) throw new Error('no picture');
    expect(await scalePlate({ id: 'p1', ...picture.value })).toBeDefined();
    await changeByte(view);
    await expect(scalePlate({ id: 'p1', ...picture.value })).rejects.toThrow(
      /changed on the disk while it was being printed/,
    );
  });
});

it('a photo whose original was changed is told by its name, and nothing is printed', async () => {
  const { dir, sha, original } = await photographed();
  await changeByte(original);
  await expect(print(await openAgain(dir), sha)).rejects.toThrow(
    'The photo “The chair” is not as it was taken in, so nothing was printed: put its file back from a copy of the record, or remove it from this piece.',
  );
});
