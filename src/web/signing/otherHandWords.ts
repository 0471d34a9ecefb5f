/**
 * What is said before signing where the name that signs is not that of the examiner of the piece; undefined where they are one, or
 * where one of the two is not given. Capitals, spaces and points make no other person.
 */
export function otherHandWords(examiner: string, name: string): string | undefined {
  const [examined, signs] = [plain(examiner), plain(name)];
  if (examined === '' || signs === '' || examined === signs) return undefined;
  return `The examiner of this piece is “${examiner.trim()}”, and you are signing as “${name.trim()}”: the opinion would bear both names. Sign as the examiner, or set right who examined the piece.`;
}

function plain(name: string): string {
  return name
    .normalize('NFKC')
    .replaceAll(/[\s.,]+/g, ' ')
    .trim()
    .toLowerCase();
}
