/** So many lines of noughts that stand in one piece of memory: one costs hardly less than all of them. */
export function linesTogether(lines: number, length: number): Float64Array[] {
  const all = new Float64Array(lines * length);
  return Array.from({ length: lines }, (_, index) => all.subarray(index * length, (index + 1) * length));
}
