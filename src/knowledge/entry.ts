import type { z } from 'zod';
import type { EntryKind, entrySchemas } from './fileKind.ts';
import type { YamlPath } from './parseYaml.ts';

/** What an entry of a kind says, once it fits its schema. */
export type EntryValue<Kind extends EntryKind> = z.output<(typeof entrySchemas)[Kind]>;

/** One entry of the knowledge files, with where it stands. */
export type Entry<Kind extends EntryKind = EntryKind> = {
  kind: Kind;
  /** Its id, or what stands in for one: the file for `making`, the place in the list where the id is missing. */
  id: string;
  file: string;
  /** Family of a sign. */
  family: string;
  /** True if the person running the program added it. */
  mine: boolean;
  /** What the file says, unchecked. */
  raw: unknown;
  /** What it says, undefined where it does not fit the schema. */
  value: EntryValue<Kind> | undefined;
  issues: readonly z.core.$ZodIssue[];
  lineOf: (path: YamlPath) => number;
};

/** An entry that fits its schema. */
export type SoundEntry<Kind extends EntryKind> = Entry<Kind> & { value: EntryValue<Kind> };

/** The entries of one kind that fit their schema. */
export function soundEntries<Kind extends EntryKind>(
  entries: readonly Entry[],
  kind: Kind,
): SoundEntry<Kind>[] {
  return entries.filter(
    (entry): entry is SoundEntry<Kind> => entry.kind === kind && entry.value !== undefined,
  );
}
