import type { PreparedCase } from './preparedCase.ts';
import { lineAt, midYear } from './yearAxis.ts';

/** For one way of making, ageing or use: the share of each of three states, a line over the bins of the part's year. */
export type ThreeShares = readonly [Float64Array, Float64Array, Float64Array];

/** All state shares of tooling, ageing and use, by the keys of the knowledge's making file. */
export type CauseShares = {
  tooling: Record<string, ThreeShares>;
  ageing: Record<string, ThreeShares>;
  use: Record<string, ThreeShares>;
};

/**
 * How tooling, ageing and use are shared among their states for a part of each year.
 *
 * @returns by key, three lines of shares that sum to 1 in each bin: tooling [hand, early-machine, modern-machine];
 *   ageing and use [natural, none, imitated]
 */
export function causeShares(prepared: PreparedCase): CauseShares {
  const { making } = prepared.knowledge;
  const age = (year: number) => Math.max(0, prepared.yearNow - year);
  return {
    tooling: mapValues(making.tooling, (lines) =>
      threeShares(prepared, (year) => {
        const [hand, early] = withinOne(lineAt(lines.hand, year), lineAt(lines.earlyMachine, year));
        return [hand, early, 1 - hand - early];
      }),
    ),
    ageing: mapValues(making.ageing, (lines) => naturalOrImitated(prepared, lines, age)),
    use: mapValues(making.use, (lines) => naturalOrImitated(prepared, lines, age)),
  };
}

type Line = readonly (readonly [number, number])[];

function naturalOrImitated(
  prepared: PreparedCase,
  lines: { natural: Line; imitated: Line },
  age: (year: number) => number,
) {
  return threeShares(prepared, (year) => {
    const [natural, imitated] = withinOne(
      lineAt(lines.natural, age(year)),
      lineAt(lines.imitated, age(year)),
    );
    return [natural, 1 - natural - imitated, imitated];
  });
}

function withinOne(a: number, b: number): [number, number] {
  const sum = a + b;
  return sum > 1 ? [a / sum, b / sum] : [a, b];
}

function threeShares(prepared: PreparedCase, at: (year: number) => [number, number, number]): ThreeShares {
  const { axis } = prepared;
  const lines = [0, 1, 2].map(() => new Float64Array(axis.bins)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (let bin = 0; bin < axis.bins; bin++)
    at(midYear(axis, bin)).forEach((share, state) => {
      (lines[state] as Float64Array)[bin] = share;
    });
  return lines;
}

function mapValues<A, B>(record: Record<string, A>, map: (value: A) => B): Record<string, B> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, map(value)]));
}
