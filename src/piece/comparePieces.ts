import type { BenchResult } from './benchResult.ts';
import type { Json } from './event.ts';
import type { Finding } from './finding.ts';
import type { Measure } from './measure.ts';
import type { Observation } from './observation.ts';
import type { Photo } from './photo.ts';
import type { Piece, PiecePart } from './piece.ts';

/** What came, went and changed among things kept by id. */
export type Changes<One> = {
  added: readonly One[];
  removed: readonly One[];
  changed: readonly { was: One; now: One }[];
};

/** One field that holds something else: `was` or `now` is left out where nothing stood. */
export type FieldChange = { path: readonly string[]; was?: Json; now?: Json };

/** How a piece differs from what it was. `same` is true where nothing that is weighed or printed differs. */
export type PieceComparison = {
  same: boolean;
  findings: Changes<Finding>;
  observations: Changes<Observation>;
  photos: Changes<Photo>;
  measures: Changes<Measure>;
  parts: Changes<PiecePart>;
  bench: Changes<BenchResult>;
  fields: readonly FieldChange[];
};

/** Compares a piece with what it was when a revision was signed. Where it stands among the pieces is no difference. */
export function comparePieces(then: Piece, now: Piece): PieceComparison {
  const found = {
    findings: changesOf(then.findings, now.findings),
    observations: changesOf(then.observations, now.observations),
    photos: changesOf(then.photos, now.photos),
    measures: changesOf(then.measures, now.measures),
    parts: changesOf(then.parts, now.parts),
    bench: changesOf(then.bench, now.bench),
    fields: fieldChanges(then, now),
  };
  const { fields, ...lists } = found;
  const same =
    fields.length === 0 &&
    Object.values(lists).every((each) => each.added.length + each.removed.length + each.changed.length === 0);
  return { same, ...found };
}

/** Places that say nothing of the piece itself, or that are compared as lists. */
const passedOver = new Set(['id', 'example', 'putAway', 'openedOn', 'issued', 'settled']);
const lists = new Set(['findings', 'observations', 'photos', 'measures', 'parts', 'bench']);
const ofSigning = new Set(['status', 'signedBy', 'signedOn', 'isNew', 'why']);

function changesOf<One>(
  then: Readonly<Record<string, One>>,
  now: Readonly<Record<string, One>>,
): Changes<One> {
  const before = new Map(Object.entries(then));
  const after = new Map(Object.entries(now));
  return {
    added: [...after].flatMap(([key, one]) => (before.has(key) ? [] : [one])),
    removed: [...before].flatMap(([key, one]) => (after.has(key) ? [] : [one])),
    changed: [...after].flatMap(([key, one]) => {
      const was = before.get(key);
      return was === undefined || sameValue(was, one) ? [] : [{ was, now: one }];
    }),
  };
}

function fieldChanges(then: Piece, now: Piece): FieldChange[] {
  const places = [...new Set([...Object.keys(then), ...Object.keys(now)])];
  return places
    .filter((place) => !passedOver.has(place) && !lists.has(place))
    .flatMap((place) =>
      leafChanges([place], then[place] as Json | undefined, now[place] as Json | undefined),
    );
}

function leafChanges(path: readonly string[], was: Json | undefined, now: Json | undefined): FieldChange[] {
  if (path[0] === 'opinion' && path.length === 2 && ofSigning.has(path[1] ?? '')) return [];
  if (sameValue(was, now)) return [];
  if (isRecord(was) && isRecord(now))
    return [...new Set([...Object.keys(was), ...Object.keys(now)])].flatMap((key) =>
      leafChanges([...path, key], was[key], now[key]),
    );
  return [{ path, ...(was === undefined ? {} : { was }), ...(now === undefined ? {} : { now }) }];
}

/** Whether two values of JSON are the same, whatever the order of their keys. */
function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [one, other] = [presentEntries(a), presentEntries(b)];
  return (
    one.length === other.length &&
    one.every(
      ([key, value]) => Object.hasOwn(b, key) && sameValue(value, (b as Record<string, unknown>)[key]),
    )
  );
}

function presentEntries(value: object): [string, unknown][] {
  return Object.entries(value).filter(([, inner]) => inner !== undefined);
}

function isRecord(value: Json | undefined): value is { [key: string]: Json } {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
