/** Text as it is being typed, and what stood in the field when its typing began. */
export type KeptText = { text: string; stood: string };

/** Where the text of a field is kept: by the page's address, the tool or photo it stands in, and its own name. */
export function textKey(page: string, place: string, name: string): string {
  return `${prefix}${page}|${place}|${name}`;
}

const prefix = 'underside.text.';

/** The text that was being typed when the page was left; undefined where none was. */
export function readKeptText(store: Storage | undefined, key: string): KeptText | undefined {
  try {
    const kept: unknown = JSON.parse(store?.getItem(key) ?? 'null');
    return isKeptText(kept) ? kept : undefined;
  } catch {
    return undefined;
  }
}

/** Text to go on with: undefined where the field no longer has what stood there when its typing began. */
export function keptTextFor(key: string, value: string, store = textStore()): string | undefined {
  const kept = readKeptText(store, key);
  return kept !== undefined && kept.stood === value && kept.text !== value ? kept.text : undefined;
}

/** Keeps text letter by letter: written before the next letter can be typed, so that no reload comes between. */
export function keepText(store: Storage | undefined, key: string, kept: KeptText): void {
  try {
    if (kept.text === kept.stood) store?.removeItem(key);
    else store?.setItem(key, JSON.stringify(kept));
  } catch {
    // The store is shut or full: the text lasts as long as the page.
  }
}

/** Lets the text of a field go, once it is an act. */
export function dropText(store: Storage | undefined, key: string): void {
  store?.removeItem(key);
}

/** Lets all texts of a page go, once what was typed there is kept as a whole. */
export function dropTextsOf(store: Storage | undefined, page: string): void {
  const names = Array.from({ length: store?.length ?? 0 }, (_, at) => store?.key(at) ?? '');
  for (const name of names) if (name.startsWith(textKey(page, '', '').slice(0, -1))) store?.removeItem(name);
}

/** The store of this browser that writes at once; undefined where it is shut. */
export function textStore(): Storage | undefined {
  try {
    return localStorage;
  } catch {
    return undefined;
  }
}

function isKeptText(value: unknown): value is KeptText {
  const { text, stood } = (value ?? {}) as Partial<Record<keyof KeptText, unknown>>;
  return typeof text === 'string' && typeof stood === 'string';
}
