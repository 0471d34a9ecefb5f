import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { openPhotos, type PhotoFolder } from '../../src/record/photos.ts';
import { builtWorker } from '../kits/builtWorker.ts';
import { decompressionBomb, gradient, kinds, sha256 } from '../kits/pictures.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

let heicWorker: URL;
beforeAll(async () => {
  heicWorker = await builtWorker('src/record/heicWorker.ts');
});

const limits = { mostBytes: 2_000_000, mostPixels: 150_000_000, mostHeicPixels: 64_000_000 };

async function openFolder(more: Partial<typeof limits> = {}): Promise<{ dir: string; photos: PhotoFolder }> {
  const dir = await temporaryFolder();
  return { dir, photos: await openPhotos(dir, { ...limits, ...more, heicWorker }) };
}

async function* inChunks(bytes: Uint8Array, size = 1000): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

async function filesIn(dir: string): Promise<string[]> {
  const entries = await readdir(dir, { recursive: true, withFileTypes: true });
  return entries.filter((one) => one.isFile()).map((one) => one.name);
}

describe.each(kinds)('a photo of kind %s', (mediaType, make) => {
  it('comes in byte for byte, with its size, and is shown as JPEG', async () => {
    const { photos } = await openFolder();
    const bytes = await make();
    const kept = await photos.put(sha256(bytes), inChunks(bytes));
    expect(kept).toMatchObject({
      ok: true,
      value: { mediaType, bytes: bytes.length, widthPx: 320, heightPx: 200 },
    });
    const original = await photos.original(sha256(bytes));
    expect(original?.mediaType).toBe(mediaType);
    expect(sha256(await readFile(original?.path ?? ''))).toBe(sha256(bytes));
    for (const size of ['view', 'thumb'] as const) {
      const shown = await sharp((await photos.shown(sha256(bytes), size)) ?? '').metadata();
      expect(shown).toMatchObject({ format: 'jpeg', width: 320, height: 200 });
    }
  });

  it('is refused when it is cut short, and leaves nothing behind', async () => {
    const { dir, photos } = await openFolder();
    const bytes = await make();
    const cut = bytes.subarray(0, Math.floor(bytes.length * 0.6));
    expect(await photos.put(sha256(cut), inChunks(cut))).toMatchObject({
      ok: false,
      faults: [{ code: 'photo.broken' }],
    });
    expect(await filesIn(dir)).toEqual([]);
  });
});

describe('what a photo says of itself', () => {
  it('gives time and camera, and says that the zone is not known', async () => {
    const { photos } = await openFolder();
    const bytes = await gradient()
      .withExif({
        IFD0: { Make: 'Invented', Model: 'Box' },
        IFD2: { DateTimeOriginal: '2026:04:02 10:15:00' },
      })
      .jpeg()
      .toBuffer();
    const kept = await photos.put(sha256(bytes), inChunks(bytes));
    expect(kept).toMatchObject({
      ok: true,
      value: { takenAt: '2026-04-02T10:15:00', camera: 'Invented Box' },
    });
    expect(kept.ok && kept.value.note).toBe(
      'The camera wrote no time zone: the time is that of its own clock.',
    );
  });

  it('gives them for HEIC too', async () => {
    const { photos } = await openFolder();
    const bytes = await readFile(new URL('../pictures/gradient.heic', import.meta.url));
    expect(await photos.put(sha256(bytes), inChunks(bytes))).toMatchObject({
      ok: true,
      value: { takenAt: '2026-04-02T10:15:00', camera: 'Invented Box Camera' },
    });
  });

  it('says so when the camera wrote no time, or one that is no time', async () => {
    const { photos } = await openFolder();
    const plain = await gradient().jpeg().toBuffer();
    const odd = await gradient()
      .withExif({ IFD2: { DateTimeOriginal: '0000:00:00 99:99:99' } })
      .jpeg()
      .toBuffer();
    for (const bytes of [plain, odd]) {
      const kept = await photos.put(sha256(bytes), inChunks(bytes));
      expect(kept.ok && kept.value).toMatchObject({ note: 'The camera wrote no time.' });
      expect(kept.ok && kept.value.takenAt).toBeUndefined();
    }
  });

  it('counts width and height as the picture is seen, turned upright', async () => {
    const { photos } = await openFolder();
    const bytes = await gradient().withMetadata({ orientation: 6 }).jpeg().toBuffer();
    expect(await photos.put(sha256(bytes), inChunks(bytes))).toMatchObject({
      ok: true,
      value: { widthPx: 200, heightPx: 320 },
    });
  });
});

describe('what is refused', () => {
  it('a hash that is not that of the bytes', async () => {
    const { dir, photos } = await openFolder();
    const bytes = await gradient().png().toBuffer();
    expect(await photos.put('0'.repeat(64), inChunks(bytes))).toMatchObject({
      ok: false,
      faults: [{ code: 'photo.other-bytes' }],
    });
    expect(await filesIn(dir)).toEqual([]);
  });

  it.each([
    ['a text', Buffer.from('not a picture at all')],
    ['a PDF', Buffer.from('%PDF-1.7 …')],
    ['an SVG', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>')],
    ['nothing', Buffer.alloc(0)],
  ])('%s', async (_what, bytes) => {
    const { dir, photos } = await openFolder();
    expect(await photos.put(sha256(bytes), inChunks(bytes))).toMatchObject({
      ok: false,
      faults: [{ code: 'photo.not-a-photo' }],
    });
    expect(await filesIn(dir)).toEqual([]);
  });

  it('a file larger than the limit, as soon as it passes it', async () => {
    const { dir, photos } = await openFolder({ mostBytes: 10_000 });
    let sent = 0;
    async function* endless() {
      for (;;) {
        sent += 1000;
        yield Buffer.alloc(1000, 0xff);
      }
    }
    expect(await photos.put('0'.repeat(64), endless())).toMatchObject({
      ok: false,
      faults: [{ code: 'photo.too-large' }],
    });
    expect(sent).toBeLessThan(20_000);
    expect(await filesIn(dir)).toEqual([]);
  });

  it('a small file that unfolds into a picture without end', async () => {
    const { dir, photos } = await openFolder();
    const bytes = decompressionBomb();
    expect(bytes.length).toBeLessThan(10_000);
    expect(await photos.put(sha256(bytes), inChunks(bytes))).toMatchObject({
      ok: false,
      faults: [{ code: 'photo.too-many-pixels' }],
    });
    expect(await filesIn(dir)).toEqual([]);
  });

  it('a HEIC with more pixels than can be opened', async () => {
    const { photos } = await openFolder({ mostHeicPixels: 1000 });
    const bytes = await readFile(new URL('../pictures/gradient.heic', import.meta.url));
    expect(await photos.put(sha256(bytes), inChunks(bytes))).toMatchObject({
      ok: false,
      faults: [{ code: 'photo.too-many-pixels' }],
    });
  });

  it('a stream that breaks off, while others go on unharmed', async () => {
    const { photos } = await openFolder();
    const good = await gradient().png().toBuffer();
    async function* broken() {
      yield good.subarray(0, 100);
      throw new Error('connection lost');
    }
    const [lost, kept] = await Promise.all([
      photos.put(sha256(good), broken()),
      photos.put(sha256(good), inChunks(good)),
    ]);
    expect(lost).toMatchObject({ ok: false, faults: [{ code: 'photo.cut-off' }] });
    expect(kept.ok).toBe(true);
  });
});

describe('the folder', () => {
  it('makes the shown sizes again when they were removed', async () => {
    const { dir, photos } = await openFolder();
    const bytes = await gradient(900, 600).png().toBuffer();
    await photos.put(sha256(bytes), inChunks(bytes));
    await rm(join(dir, 'derived'), { recursive: true });
    const thumb = await photos.shown(sha256(bytes), 'thumb');
    expect(await sharp(thumb).metadata()).toMatchObject({ width: 320, height: 213 });
  });

  it('takes one photo in once, though it is sent twice at once', async () => {
    const { dir, photos } = await openFolder();
    const bytes = await gradient().png().toBuffer();
    const both = await Promise.all([
      photos.put(sha256(bytes), inChunks(bytes)),
      photos.put(sha256(bytes), inChunks(bytes)),
    ]);
    expect(both.every((one) => one.ok)).toBe(true);
    expect((await filesIn(join(dir, 'photos'))).length).toBe(1);
    expect(await filesIn(join(dir, 'incoming'))).toEqual([]);
  });

  it('clears away what a crash left half received', async () => {
    const { dir } = await openFolder();
    await writeFile(join(dir, 'incoming', 'half'), 'half a photo');
    await openPhotos(dir, { ...limits, heicWorker });
    expect(await filesIn(join(dir, 'incoming'))).toEqual([]);
  });
});
