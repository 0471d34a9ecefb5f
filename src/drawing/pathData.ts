import type { Point, Run } from './outline.ts';

/** Runs as the `d` of an SVG path, to a hundredth of a millimetre; straight curves are written as lines. */
export function pathData(runs: readonly Run[]): string {
  return runs.map(runData).join(' ');
}

function runData(run: Run): string {
  const words = [`M ${pair(run.start)}`];
  let from: Point = run.start;
  for (const [first, second, end] of run.curves) {
    const straight = isOn(from, end, first) && isOn(from, end, second);
    words.push(straight ? `L ${pair(end)}` : `C ${pair(first)} ${pair(second)} ${pair(end)}`);
    from = end;
  }
  return [...words, 'Z'].join(' ');
}

/** Whether a control point lies on the stretch between two ends, to a thousandth of a millimetre. */
function isOn([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): boolean {
  const length = Math.hypot(bx - ax, by - ay);
  if (length < 1e-9) return Math.hypot(x - ax, y - ay) < 1e-3;
  const aside = Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length;
  const along = ((bx - ax) * (x - ax) + (by - ay) * (y - ay)) / length;
  return aside < 1e-3 && along > -1e-3 && along < length + 1e-3;
}

function pair([x, y]: Point): string {
  return `${short(x)} ${short(y)}`;
}

function short(mm: number): number {
  return Math.round(mm * 100) / 100 + 0;
}
