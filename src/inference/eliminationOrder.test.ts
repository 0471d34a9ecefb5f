import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { eliminationOrder } from './eliminationOrder.ts';

/** The scopes that are left once these unknowns are summed out, by joining the scopes each is in. */
function joinedAfter(order: readonly number[], scopes: readonly (readonly number[])[]): number[][] {
  return order.reduce<number[][]>(
    (open, variable) => [
      ...open.filter((scope) => !scope.includes(variable)),
      joined(variable, open).filter((each) => each !== variable),
    ],
    scopes.map((scope) => [...scope]),
  );
}

function joined(variable: number, open: readonly (readonly number[])[]): number[] {
  return [...new Set(open.filter((scope) => scope.includes(variable)).flat())];
}

/** The size of the largest table along an order. */
function largestAlong(
  order: readonly number[],
  scopes: readonly (readonly number[])[],
  sizes: readonly number[],
): number {
  const tables = order.map((variable, step) => joined(variable, joinedAfter(order.slice(0, step), scopes)));
  return Math.max(...tables.map((table) => table.reduce((size, each) => size * (sizes[each] as number), 1)));
}

function grid(side: number): number[][] {
  const at = (row: number, column: number) => row * side + column;
  return Array.from({ length: side * side }, (_, index) => {
    const [row, column] = [Math.floor(index / side), index % side];
    return [
      ...(column + 1 < side ? [[index, at(row, column + 1)]] : []),
      ...(row + 1 < side ? [[index, at(row + 1, column)]] : []),
    ];
  }).flat();
}

describe('an order of elimination', () => {
  test.each([3, 4, 5])('a grid of side %d needs no table over more than side + 1 unknowns', (side) => {
    // The treewidth of an n by n grid is n (Bodlaender 1998, from memory), so n + 1 is the least there can be.
    const scopes = grid(side);
    const sizes = scopes.map(() => 2);
    const order = eliminationOrder(scopes, sizes);
    expect([...order].sort((a, b) => a - b)).toEqual(
      Array.from({ length: side * side }, (_, index) => index),
    );
    expect(largestAlong(order, scopes, sizes)).toBe(2 ** (side + 1));
  });

  test('each step takes an unknown whose table is the smallest at that step', () => {
    const scope = fc.uniqueArray(fc.nat(9), { minLength: 2, maxLength: 3 });
    fc.assert(
      fc.property(
        fc.array(scope, { minLength: 6, maxLength: 16 }),
        fc.array(fc.integer({ min: 2, max: 5 }), { minLength: 10, maxLength: 10 }),
        (scopes, sizes) => {
          const order = eliminationOrder(scopes, sizes);
          order.forEach((variable, step) => {
            const before = order.slice(0, step);
            const size = (next: number) => largestAlong([next], joinedAfter(before, scopes), sizes);
            for (const other of order.slice(step + 1))
              expect(size(variable)).toBeLessThanOrEqual(size(other));
          });
        },
      ),
      { seed: 1973, numRuns: 200 },
    );
  });

  test('a tree of unknowns never needs a table larger than one of its links', () => {
    const sizes = Array.from({ length: 40 }, (_, index) => 2 + ((index * 7) % 5));
    const scopes = sizes.slice(1).map((_, index) => [index + 1, Math.floor(index / 3)]);
    const links = scopes.map(([a, b]) => (sizes[a as number] as number) * (sizes[b as number] as number));
    expect(largestAlong(eliminationOrder(scopes, sizes), scopes, sizes)).toBeLessThanOrEqual(
      Math.max(...links),
    );
  });

  test('the caller’s own order comes first, and unknowns that are nowhere are left out', () => {
    const order = eliminationOrder([[0, 1], [1, 2], [2, 3]], [2, 2, 2, 2], [2, 9, 0]); // biome-ignore format: a list
    expect(order.slice(0, 2)).toEqual([2, 0]);
    expect([...order].sort()).toEqual([0, 1, 2, 3]);
  });
});
