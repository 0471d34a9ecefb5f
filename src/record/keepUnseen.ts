import type { Change, Json } from '../piece/event.ts';
import { applyChange, valueAt } from '../piece/fold.ts';
import { piece as pieceSchema } from '../piece/piece.ts';
import { canonicalJson } from './canonicalJson.ts';

/**
 * A change as the record keeps it: with what the device saw only where another value stood, which was then written over
 * unseen. A device sees a piece with all its fields filled in, so that values are compared as read, not as stored.
 *
 * @param change  with `from` as it stood
 * @param at      what stands at a place of the document
 */
export function keepUnseen(
  { saw, ...change }: Change,
  at: (path: readonly string[]) => Json | undefined,
): Change {
  if (saw === undefined) return change;
  if (canonicalJson(saw.value) === canonicalJson(change.from)) return change;
  const [seen, stood, now] = [saw.value, change.from, change.to].map((value) =>
    canonicalJson(asRead(change.path, value, at)),
  );
  return seen === stood || stood === now ? change : { ...change, saw };
}

/** A value at a place as a reader of the piece gets it; as it is where it can't be read by itself. */
function asRead(
  path: readonly string[],
  value: Json | undefined,
  at: (path: readonly string[]) => Json | undefined,
): unknown {
  const [place = ''] = path;
  if (!Object.hasOwn(pieceSchema.shape, place)) return value;
  // Of a table only the one entry is read, since it may hold thousands.
  const entry = path.slice(0, 2);
  const near = applyChange(at(entry), { path: path.slice(2), ...(value === undefined ? {} : { to: value }) });
  const alone = applyChange({}, { path: entry, ...(near === undefined ? {} : { to: near }) });
  const shape = pieceSchema.shape[place as keyof typeof pieceSchema.shape];
  const read = shape.safeParse(valueAt(alone, [place]));
  return read.success ? valueAt({ [place]: read.data as Json }, path) : value;
}
