/** With the first letter a capital. */
export function capital(words: string): string {
  const first = [...words][0] ?? '';
  return first.toUpperCase() + words.slice(first.length);
}

/** `a, b and c`; with another word before the last: `a, b or c`. */
export function listed(words: readonly string[], before: 'and' | 'or' = 'and'): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} ${before} ${words.at(-1)}`;
}

/** `1 finding`, `2 findings`; with a word of its own for many: `3 entries`. */
export function counted(number: number, one: string, many = `${one}s`): string {
  return `${number} ${number === 1 ? one : many}`;
}
