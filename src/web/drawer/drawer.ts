import type { z } from 'zod';

/** What is kept in this browser, each kind under its own name: nothing else is written to its stores. */
export const names = {
  theme: 'underside.theme',
  who: 'underside.who',
  device: 'underside.device',
  tab: 'underside.tab',
  /** Id of the record that last answered. */
  record: 'underside.record',
  /** An act set aside; what stands before its id. */
  act: 'underside.act.',
  /** The text of a field; what stands before its place. */
  text: 'underside.text.',
  visit: (piece: string) => `underside.visit.${piece}`,
  observation: (piece: string) => `underside.observation.${piece}`,
  bench: (tool: string) => `underside.bench.${tool}`,
  own: (entry: string) => `underside.own.${entry}`,
} as const;

/** The store of this device, which writes at once and outlives the tab; undefined where the browser has it shut. */
export function deviceStore(): Storage | undefined {
  return unlessShut(() => localStorage);
}

/** The store of this tab, which outlives a reload. */
export function tabStore(): Storage | undefined {
  return unlessShut(() => sessionStorage);
}

/** A small thing that was kept, or null where none was or the browser keeps nothing. */
export function readKept(name: string, store = deviceStore()): string | null {
  return unlessShut(() => store?.getItem(name)) ?? null;
}

/** Keeps a small thing, or without one lets go of what was kept. Where the store is shut or full it lasts as long as the page. */
export function keep(name: string, value: string | undefined, store = deviceStore()): void {
  unlessShut(() => (value === undefined ? store?.removeItem(name) : store?.setItem(name, value)));
}

/** What was kept as JSON and has its shape; undefined where nothing was, or nothing that can be read. */
export function readKeptAs<Kept>(
  name: string,
  shape: z.ZodType<Kept>,
  store = deviceStore(),
): Kept | undefined {
  return unlessShut(() => shape.safeParse(JSON.parse(readKept(name, store) ?? 'null')).data);
}

/** The names under which something is kept that begin so. */
export function namesKept(begin: string, store = deviceStore()): string[] {
  const all = Array.from({ length: store?.length ?? 0 }, (_, at) => store?.key(at) ?? '');
  return all.filter((name) => name.startsWith(begin));
}

/** A store that is shut (some private windows) or full throws, and so does text that is no JSON: neither is a fault of the page. */
function unlessShut<Answer>(ask: () => Answer): Answer | undefined {
  try {
    return ask();
  } catch {
    return undefined;
  }
}
