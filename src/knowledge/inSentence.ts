/** Names that keep their capital wherever they stand. */
const properNames = new Set(
  'African American Brazilian Chippendale Cuban Douglas Dutch English European French German Gothic Hepplewhite Indian Irish Italian Marlborough Pembroke Philadelphia Regency Roman Scots Sheraton Spanish Windsor'.split(
    ' ',
  ),
);

/**
 * A label as it stands within a sentence: its first letter small, unless it begins with a shape (`H stretcher`, `C-scrolls`,
 * `X-ray`) or a proper name (`Windsor chair`). The rest is left as it was written.
 */
export function inSentence(label: string): string {
  const [first = ''] = label.split(' ');
  const ordinary = /^[A-Z][a-z]/.test(first) && !properNames.has(first.replace(/[-,’'].*$/, ''));
  return ordinary || first === 'A' ? label.charAt(0).toLowerCase() + label.slice(1) : label;
}
