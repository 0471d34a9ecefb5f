import { done, type Outcome, refuse } from '../ground/fault.ts';
import type { DraftEvent, Json } from '../piece/event.ts';
import { unsettled } from '../piece/overwritten.ts';
import { type Piece, piece as pieceSchema } from '../piece/piece.ts';
import { canonicalJson } from './canonicalJson.ts';
import type { PieceState } from './pieceState.ts';

/** Places of a piece that no act may change: its name in the record, and whether it is an example. */
const fixedPlaces = new Set(['id', 'example']);

/** Whether an act may be made on a piece as it stands; the faults say why not. */
export function checkAct(state: PieceState, draft: DraftEvent, isExample: boolean): Outcome<undefined> {
  if (
    draft.kind === 'undo' ||
    draft.kind === 'redo' ||
    (draft.of !== undefined && draft.kind !== 'overwrite-settled')
  ) {
    return refuse(
      'record.undo-by-its-own-way',
      'Undo and redo are asked for at the piece, not handed in as acts.',
      'kind',
    );
  }
  if (
    isExample &&
    !(draft.kind === 'piece-put-away' && draft.changes.every((one) => one.path.join('.') === 'putAway'))
  ) {
    return refuse(
      'record.example-is-read-only',
      'The worked examples stay as they are: make it yours to work on a copy.',
      'piece',
    );
  }
  if (signs(draft))
    return refuse(
      'record.signed-by-its-own-way',
      'An opinion is signed on its own page, which keeps all it rests on: open the opinion, read it, and sign there.',
      'changes',
    );
  const wholes = draft.changes.filter((one) => one.path.length === 0).length;
  if (draft.kind === 'piece-opened') {
    if (state.document !== undefined)
      return refuse('record.already-open', 'A piece of this name is in the record already.', 'piece');
    if (wholes !== 1 || draft.changes.length !== 1)
      return refuse('record.open-whole', 'A piece is opened by one change that sets all of it.', 'changes');
    return done(undefined);
  }
  if (state.document === undefined)
    return refuse('record.not-opened', 'There is no such piece in the record: open it first.', 'piece');
  if (draft.kind === 'overwrite-settled' && !settlesWhatIsOpen(state, draft))
    return refuse(
      'record.nothing-to-settle',
      'Which value holds here was settled already, or the act that wrote over it was taken back: look at it once more.',
      'of',
    );
  for (const [index, { path }] of draft.changes.entries()) {
    const [place] = path;
    const at = `changes.${index}.path`;
    if (place === undefined)
      return refuse('record.not-the-whole', 'An act changes one place of a piece, never all of it.', at);
    if (fixedPlaces.has(place))
      return refuse('record.fixed-place', `"${place}" of a piece never changes.`, at);
    if (!Object.hasOwn(pieceSchema.shape, place))
      return refuse('record.unknown-place', `A piece has nothing called "${place}".`, at);
  }
  return done(undefined);
}

function settlesWhatIsOpen(state: PieceState, draft: DraftEvent): boolean {
  const open = unsettled(state.overwritten).filter(({ act }) => act === draft.of);
  return draft.changes.every(({ path }) =>
    open.some((one) => canonicalJson(one.path) === canonicalJson(path)),
  );
}

/** Whether an act would make a signature out of nothing but words: those come with their files, by `issue`. */
function signs({ kind, changes }: DraftEvent): boolean {
  return kind === 'opinion-issued' || changes.some(({ path, to }) => setsSignature(path, to));
}

function setsSignature(path: readonly string[], to: Json | undefined): boolean {
  if (path[0] === 'issued') return true;
  const set = path.toReversed().reduce<unknown>((inner, key) => ({ [key]: inner }), to);
  const { issued, opinion } = (set ?? {}) as { issued?: unknown; opinion?: { status?: unknown } };
  return opinion?.status === 'signed' || Object.keys(issued ?? {}).length > 0;
}

/** The document read as a piece, or where it does not fit. */
export function readPiece(document: unknown, id: string, isExample: boolean): Outcome<Piece> {
  const read = pieceSchema.safeParse(document);
  if (!read.success) {
    const faults = read.error.issues.map((issue) => {
      const path = issue.path.join('.');
      return {
        code: 'record.does-not-fit',
        path,
        message: `${path || 'The piece'} does not fit: ${issue.message}. Nothing was written.`,
      };
    });
    return { ok: false, faults };
  }
  if (read.data.id !== id)
    return refuse(
      'record.other-id',
      `The piece says it is "${read.data.id}", and the act was for "${id}".`,
      'id',
    );
  if (read.data.example !== isExample)
    return refuse(
      'record.not-an-example',
      'Only the examples that come with the program are examples.',
      'example',
    );
  const stray = strayKey(read.data);
  if (stray !== undefined)
    return refuse('record.key-and-id', `${stray} stands under another name than its own.`, stray);
  return done(read.data);
}

/** A thing kept under a key that is not its id would be found under neither. */
function strayKey(piece: Piece): string | undefined {
  for (const place of [
    'parts',
    'findings',
    'measures',
    'photos',
    'owners',
    'comparables',
    'damages',
  ] as const) {
    for (const [key, one] of Object.entries(piece[place])) if (one.id !== key) return `${place}.${key}`;
  }
  return undefined;
}
