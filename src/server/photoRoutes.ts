import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { type Context, Hono } from 'hono';
import { refuse } from '../ground/fault.ts';
import { isSha256 } from '../record/photoPaths.ts';
import { type PhotoFolder, photoLimits } from '../record/photos.ts';
import { faultAnswer, faultsAnswer } from './faultAnswer.ts';
import { nameNote } from './nameNote.ts';

/** The photos: taken in byte for byte, shown whole, at screen size and as a thumb. */
export function photoRoutes(photos: PhotoFolder, mostBytes = photoLimits.mostBytes): Hono {
  const routes = new Hono();
  routes.put('/:sha', async (context) => {
    const sha = context.req.param('sha');
    if (!isSha256(sha)) return noPhoto(context);
    const body = context.req.raw.body;
    if (body === null)
      return faultAnswer(context, 422, 'photo.empty', 'The photo is empty: choose it again.');
    if (Number(context.req.header('content-length') ?? 0) > mostBytes) {
      return faultsAnswer(
        context,
        refuse(
          'photo.too-large',
          `The file is larger than ${Math.floor(mostBytes / 1e6)} MB: hand in a smaller picture.`,
        ).faults,
      );
    }
    const kept = await photos.put(sha, body);
    if (!kept.ok) return faultsAnswer(context, kept.faults);
    const note = [kept.value.note, nameNote(context.req.header('x-name'), kept.value.mediaType)]
      .filter((one) => one !== '')
      .join(' ');
    return context.json({ ...kept.value, note });
  });
  routes.get('/:sha/original', async (context) => {
    const sha = context.req.param('sha');
    const found = isSha256(sha) ? await photos.original(sha) : undefined;
    return found ? sendFile(context, found.path, found.mediaType) : noPhoto(context);
  });
  for (const size of ['view', 'thumb'] as const) {
    routes.get(`/:sha/${size}`, async (context) => {
      const sha = context.req.param('sha');
      const found = isSha256(sha) ? await photos.shown(sha, size) : undefined;
      return found ? sendFile(context, found, 'image/jpeg') : noPhoto(context);
    });
  }
  return routes;
}

/** What stands under a hash never changes, so a browser may keep it for good. */
async function sendFile(context: Context, path: string, mediaType: string) {
  const { size } = await stat(path);
  return context.body(Readable.toWeb(createReadStream(path)) as ReadableStream, 200, {
    'content-type': mediaType,
    'content-length': String(size),
    'cache-control': 'private, max-age=31536000, immutable',
  });
}

function noPhoto(context: Context) {
  return faultAnswer(context, 404, 'photo.none', 'There is no such photo in this record.');
}
