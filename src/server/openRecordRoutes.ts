import { Hono } from 'hono';
import { ZipFile } from 'yazl';
import { caseFromPiece } from '../evidence/caseFromPiece.ts';
import { csvTables } from '../interchange/csvTables.ts';
import { iiifManifest } from '../interchange/iiifManifest.ts';
import { linkedArt, type PartToldApart } from '../interchange/linkedArt.ts';
import { idWords } from '../knowledge/idWords.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { hasEvidence } from '../piece/hasEvidence.ts';
import type { Piece } from '../piece/piece.ts';
import { platesOf } from '../piece/plates.ts';
import type { PhotoFolder } from '../record/photos.ts';
import type { RecordStore } from '../record/store.ts';
import { weighCase } from '../weighing/weighCase.ts';
import { localDay } from './askOpinion.ts';
import { faultAnswer } from './faultAnswer.ts';
import { fileHeaders, opinionFileName } from './issuedFile.ts';

/** What the routes need. */
export type OpenRecordParts = {
  store: RecordStore;
  photos: Pick<PhotoFolder, 'printable'>;
  knowledge: () => Knowledge;
  yearNow: () => number;
};

const kinds = {
  csv: { name: 'tables', make: csvFiles },
  'linked-art': { name: 'Linked Art', make: linkedArtFiles },
  iiif: { name: 'plates with IIIF manifest', make: iiifFiles },
} as const;

type Files = Map<string, string | { path: string }>;

/** A piece in open forms, each as one zip: `/pieces/ID/open/csv`, `linked-art` or `iiif`, with `?base=` the address it will be published at. */
export function openRecordRoutes(parts: OpenRecordParts): Hono {
  const routes = new Hono();
  routes.get('/pieces/:id/open/:kind', async (context) => {
    const view = parts.store.piece(context.req.param('id'));
    if (view === undefined)
      return faultAnswer(context, 404, 'record.no-piece', 'There is no such piece in this record.');
    const kind = Object.entries(kinds).find(([id]) => id === context.req.param('kind'))?.[1];
    if (kind === undefined)
      return faultAnswer(
        context,
        404,
        'server.no-such-form',
        `Open records are handed out as ${Object.keys(kinds).join(', ')}.`,
      );
    const base = baseOf(context.req.query('base'), view.piece.id);
    if (base === undefined)
      return faultAnswer(
        context,
        422,
        'server.no-address',
        'The address has to begin with https:// or http://.',
        'base',
      );
    const files = await kind.make(view.piece, base, parts);
    const name = opinionFileName(view.piece, localDay(new Date()), kind.name, 'zip');
    return context.body(new Uint8Array(await zipped(files)), 200, fileHeaders(name));
  });
  return routes;
}

/** Where the records will lie; an address nobody can have, where none is named. */
function baseOf(asked: string | undefined, id: string): string | undefined {
  const base = (asked ?? '').trim().replace(/\/+$/, '') || `https://example.org/${encodeURIComponent(id)}`;
  return /^https?:\/\/[^\s"<>]+$/.test(base) ? base : undefined;
}

async function csvFiles(piece: Piece, _base: string, { knowledge }: OpenRecordParts): Promise<Files> {
  const { forms, signs } = knowledge();
  return csvTables(piece, {
    part: (id) => forms[piece.form]?.parts.find((part) => part.id === id)?.name ?? idWords(id),
    sign: (id) => signs[id]?.name ?? idWords(id),
  });
}

async function linkedArtFiles(piece: Piece, base: string, parts: OpenRecordParts): Promise<Files> {
  const records = linkedArt(piece, parts.knowledge(), base, partsToldApart(piece, parts));
  return new Map([...records].map(([name, record]) => [name, `${JSON.stringify(record, null, 2)}\n`]));
}

/** The parts that the findings read as not of the making, and why; none where nothing is weighed. */
function partsToldApart(piece: Piece, { knowledge, yearNow }: OpenRecordParts): PartToldApart[] {
  if (!hasEvidence(piece)) return [];
  // The readings are asked for, not how firm they are: few trials of the ranges do.
  const weighed = weighCase({ ...caseFromPiece(piece), draws: 10 }, knowledge(), { yearNow: yearNow() });
  if (!weighed.ok) return [];
  return weighed.output.parts
    .filter(({ standing }) => ['repair', 'improve', 'other-old'].includes(standing))
    .map(({ id, name, words }) => ({ id, name, why: words }));
}

async function iiifFiles(piece: Piece, base: string, { photos }: OpenRecordParts): Promise<Files> {
  const files: Files = new Map([
    ['manifest.json', `${JSON.stringify(iiifManifest(piece, base), null, 2)}\n`],
  ]);
  for (const { photo, plate } of platesOf(piece)) {
    if (plate === undefined) continue;
    const picture = await photos.printable(photo.sha256);
    if (picture.ok && picture.value?.mediaType === 'image/jpeg')
      files.set(`plates/${plate}.jpg`, { path: picture.value.path });
  }
  return files;
}

async function zipped(files: Files): Promise<Buffer> {
  const zip = new ZipFile();
  for (const [name, content] of files)
    if (typeof content === 'string') zip.addBuffer(Buffer.from(content), name);
    else zip.addFile(content.path, name, { compress: false });
  zip.end();
  const chunks: Buffer[] = [];
  for await (const chunk of zip.outputStream) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}
