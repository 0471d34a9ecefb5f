/** Flat points x0, y0, x1, y1, … of one closed loop. */
export type FlatLoop = number[];

/**
 * Finds the samples inside loops (even-odd rule), and gives them row by row.
 *
 * @param visit  called with a row and the first and last column inside, both included
 */
export function fillLoops(
  loops: FlatLoop[],
  across: number,
  high: number,
  visit: (row: number, from: number, to: number) => void,
): void {
  let top = Number.POSITIVE_INFINITY;
  let bottom = Number.NEGATIVE_INFINITY;
  for (const loop of loops)
    for (let i = 1; i < loop.length; i += 2) {
      top = Math.min(top, loop[i] as number);
      bottom = Math.max(bottom, loop[i] as number);
    }
  const last = Math.min(high - 1, Math.floor(bottom - 0.5));
  const crossings: number[] = [];
  for (let row = Math.max(0, Math.ceil(top - 0.5)); row <= last; row++) {
    crossings.length = 0;
    for (const loop of loops) addCrossings(loop, row + 0.5, crossings);
    if (crossings.length > 2) crossings.sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const one = Math.min(crossings[i] as number, crossings[i + 1] as number);
      const other = Math.max(crossings[i] as number, crossings[i + 1] as number);
      const from = Math.max(0, Math.ceil(one - 0.5));
      const to = Math.min(across - 1, Math.ceil(other - 0.5) - 1);
      if (from <= to) visit(row, from, to);
    }
  }
}

function addCrossings(loop: FlatLoop, y: number, crossings: number[]): void {
  let x0 = loop[loop.length - 2] as number;
  let y0 = loop[loop.length - 1] as number;
  for (let i = 0; i < loop.length; i += 2) {
    const x1 = loop[i] as number;
    const y1 = loop[i + 1] as number;
    if (y0 <= y !== y1 <= y) crossings.push(x0 + ((y - y0) / (y1 - y0)) * (x1 - x0));
    x0 = x1;
    y0 = y1;
  }
}
