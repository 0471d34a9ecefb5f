import { z } from 'zod';
import { keep, names, namesKept, readKeptAs } from '../drawer/drawer.ts';

const keptText = z.object({ text: z.string(), stood: z.string() });

/** Text as it is being typed, and what stood in the field when its typing began. */
export type KeptText = z.infer<typeof keptText>;

/** Where the text of a field is kept: by the page's address, the tool or photo it stands in, and its own name. */
export function textKey(page: string, place: string, name: string): string {
  return `${names.text}${page}|${place}|${name}`;
}

/** The text that was being typed when the page was left; undefined where none was. */
export function readKeptText(key: string, store?: Storage): KeptText | undefined {
  return readKeptAs(key, keptText, store);
}

/** Text to go on with: undefined where the field no longer has what stood there when its typing began. */
export function keptTextFor(key: string, value: string, store?: Storage): string | undefined {
  const kept = readKeptText(key, store);
  return kept !== undefined && kept.stood === value && kept.text !== value ? kept.text : undefined;
}

/** Keeps text letter by letter: written before the next letter can be typed, so that no reload comes between. */
export function keepText(key: string, kept: KeptText, store?: Storage): void {
  keep(key, kept.text === kept.stood ? undefined : JSON.stringify(kept), store);
}

/** Lets the text of a field go, once it is an act. */
export function dropText(key: string, store?: Storage): void {
  keep(key, undefined, store);
}

/** Lets all texts of a page go, once what was typed there is kept as a whole. */
export function dropTextsOf(page: string, store?: Storage): void {
  for (const name of namesKept(textKey(page, '', '').slice(0, -1), store)) keep(name, undefined, store);
}
