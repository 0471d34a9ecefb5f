/** Where the examiner stands: a part (or `whole`), and a sign on it. */
export type ExamPlace = { part?: string | undefined; sign?: string | undefined };

/** The place as an address carries it behind the `#`: `splat/saw-arcs`, or nothing. */
export function placeToHash({ part, sign }: ExamPlace): string {
  if (part === undefined) return '';
  return sign === undefined ? part : `${part}/${sign}`;
}

/** The place an address names behind its `#`. */
export function placeFromHash(hash: string): ExamPlace {
  const [part, sign] = hash.replace(/^#/, '').split('/');
  return { part: part === '' ? undefined : part, sign };
}
