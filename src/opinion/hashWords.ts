/** A hash as it is printed, in groups of sixteen: it breaks over lines, and an eye can compare it. */
export function hashWords(hex: string): string {
  return hex.replace(/(.{16})(?=.)/g, '$1 ');
}
