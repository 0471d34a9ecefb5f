/**
 * A short hash of texts in order, to tell one state of the knowledge from another.
 *
 * Method: FNV-1a, 64 bits, over the UTF-8 bytes of each text, with a zero byte after each but the last. It guards
 * against mistakes, not against malice.
 *
 * @returns 16 hexadecimal digits
 * @source Fowler, Noll, Vo: the FNV-1a hash, with its published offset basis and prime
 */
export function contentHash(texts: readonly string[]): string {
  let hash = 0xcbf29ce484222325n;
  const add = (byte: number) => {
    hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
  };
  texts.forEach((text, index) => {
    if (index > 0) add(0);
    for (const sign of text) for (const byte of utf8(sign.codePointAt(0) ?? 0)) add(byte);
  });
  return hash.toString(16).padStart(16, '0');
}

function utf8(code: number): number[] {
  if (code < 0x80) return [code];
  const last = (shift: number) => 0x80 | ((code >> shift) & 0x3f);
  if (code < 0x800) return [0xc0 | (code >> 6), last(0)];
  if (code < 0x10000) return [0xe0 | (code >> 12), last(6), last(0)];
  return [0xf0 | (code >> 18), last(12), last(6), last(0)];
}
