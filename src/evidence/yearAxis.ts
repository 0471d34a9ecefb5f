/** Years as equal bins: bin b covers fromYear + b·stepYears up to the next bin. */
export type YearAxis = { fromYear: number; stepYears: number; bins: number };

/**
 * The bins from one year to another, the last bin holding `toYear`.
 *
 * @throws RangeError if the years run backwards or the step is not above 0
 */
export function yearAxis(fromYear: number, toYear: number, stepYears: number): YearAxis {
  if (!(stepYears > 0) || toYear < fromYear) {
    throw new RangeError(
      `yearAxis needs rising years and a step above 0, got ${fromYear}–${toYear} by ${stepYears}`,
    );
  }
  return { fromYear, stepYears, bins: Math.floor((toYear - fromYear) / stepYears) + 1 };
}

/** The bin a year falls in, clamped to the axis. */
export function binOf(axis: YearAxis, year: number): number {
  return Math.min(axis.bins - 1, Math.max(0, Math.floor((year - axis.fromYear) / axis.stepYears)));
}

/** The middle of a bin. */
export function midYear(axis: YearAxis, bin: number): number {
  return axis.fromYear + (bin + 0.5) * axis.stepYears;
}

/** Height of a line through rising [x, y] points at x: straight between them, level outside. */
export function lineAt(points: readonly (readonly [number, number])[], x: number): number {
  const first = points[0];
  const last = points[points.length - 1];
  if (first === undefined || last === undefined) return 0;
  if (x <= first[0]) return first[1];
  if (x >= last[0]) return last[1];
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1] ?? first;
    const b = points[i] ?? last;
    if (x <= b[0]) return b[0] === a[0] ? b[1] : a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
  }
  return last[1];
}
