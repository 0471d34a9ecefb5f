/** What a reference address may ask for: a shelf, or one entry of one kind. */
export type ReferenceSearch = {
  shelf?: string;
  sign?: string;
  form?: string;
  alteration?: string;
  shop?: string;
  wood?: string;
  source?: string;
  /** Which signs the shelf shows: asked of a form, on a kind of part, hanging on a cause, with a need. */
  of?: string;
  on?: string;
  cause?: string;
  needs?: string;
};

export function readReferenceSearch(search: Record<string, unknown>): ReferenceSearch {
  const names = [
    ...(['shelf', 'sign', 'form', 'alteration', 'shop', 'wood', 'source'] as const),
    ...(['of', 'on', 'cause', 'needs'] as const),
  ];
  return Object.fromEntries(
    names.flatMap((name) => (typeof search[name] === 'string' ? [[name, search[name]]] : [])),
  );
}
