import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { caseFromPiece } from '../../src/evidence/caseFromPiece.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import type { IssueHead } from '../../src/opinion/issueHead.ts';
import type { OpinionDocument } from '../../src/opinion/opinionDocument.ts';
import { opinionOf } from '../../src/opinion/setOpinion.ts';
import { hasEvidence } from '../../src/piece/hasEvidence.ts';
import type { Photo } from '../../src/piece/photo.ts';
import { type Piece, piece } from '../../src/piece/piece.ts';
import { weighCase } from '../../src/weighing/weighCase.ts';
import type { Weighing } from '../../src/weighing/weighing.ts';

const home = fileURLToPath(new URL('../..', import.meta.url));

/** A worked example as a piece, without its plates. */
export async function examplePiece(name: 'side-chair' | 'armchair'): Promise<Piece> {
  return piece.parse(parse(await readFile(`${home}/examples/${name}/piece.yaml`, 'utf8')));
}

/** A piece of which nothing but its form is known. */
export function emptyPiece(more: Partial<Piece> = {}): Piece {
  return piece.parse({ id: 'nothing-yet', form: 'side-chair', ...more });
}

/** Makes opinions as on one fixed day, with few redraws; the same findings are weighed once. */
export function opinionMaker(knowledge: Knowledge): (of: Piece, issue?: IssueHead) => OpinionDocument {
  const weighed = new Map<string, Weighing | undefined>();
  return (of, issue) => {
    const input = { ...caseFromPiece(of), draws: 10 };
    const key = JSON.stringify(input);
    if (!weighed.has(key)) {
      const result = weighCase(input, knowledge, { yearNow: 2026 });
      weighed.set(key, result.ok && hasEvidence(of) ? result.output : undefined);
    }
    const weighing = weighed.get(key);
    return opinionOf({
      piece: of,
      knowledge,
      yearNow: 2026,
      madeOn: '2026-11-25',
      version: '0.0.0-test',
      ...(weighing === undefined ? {} : { weighing }),
      ...(issue === undefined ? {} : { issue }),
    });
  };
}

/** A signing as it is printed, of a record that does not exist. */
export function issueHead(more: Partial<IssueHead> = {}): IssueHead {
  return {
    revision: 1,
    by: 'Perrin Halloway',
    on: '2026-11-20',
    isNew: '',
    why: '',
    recordId: '0b54f1c2-7d0e-4a4e-9c3b-2f6f1a9b8d77',
    count: 212,
    head: '1f'.repeat(32),
    contents: '2e'.repeat(32),
    ...more,
  };
}

/** A photo as the record describes it. */
export function photoOf(id: string, more: Partial<Photo> = {}): Photo {
  return {
    id,
    sha256: 'a'.repeat(64),
    mediaType: 'image/jpeg',
    name: `${id}.jpg`,
    bytes: 1000,
    widthPx: 320,
    heightPx: 200,
    caption: '',
    alternative: '',
    asPlate: true,
    marks: [],
    ...more,
  };
}

/** Every text in a document that a reader would read, in order. */
export function textsOf(value: unknown, key = ''): string[] {
  if (typeof value === 'string') return unread.has(key) ? [] : [value];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([name, each]) => textsOf(each, Array.isArray(value) ? key : name));
}

const unread = new Set(['svg', 'id', 'photoId', 'sha256', 'kind', 'as', 'tone', 'mediaType']);

/** All of it as one text. */
export function textOf(document: OpinionDocument): string {
  return textsOf(document).join('\n');
}
