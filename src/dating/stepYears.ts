import type { StepOrder } from './dateOrder.ts';

/** The years that are left for each step; an end that nothing bounds is undefined. */
export type StepYears = {
  years: Map<string, [number | undefined, number | undefined]>;
  /** Pairs whose bounds contradict each other: the first can’t have come before the second, or one step has no year. */
  conflicts: { notBefore: string; from: number; notAfter: string; to: number }[];
};

/**
 * Carries bounds along an order: what came later is no older than what came earlier, and what came earlier no younger.
 *
 * @param notBefore  year before which a step can’t have been done
 * @param notAfter   year by which it had been done
 * @source common practice of stratigraphy
 */
export function stepYears(
  order: StepOrder,
  notBefore: Readonly<Record<string, number>>,
  notAfter: Readonly<Record<string, number>>,
): StepYears {
  const years: StepYears['years'] = new Map();
  for (const step of order.steps) {
    const floors = order.steps
      .filter((each) => each === step || order.before(each, step))
      .flatMap((each) => notBefore[each] ?? []);
    const ceilings = order.steps
      .filter((each) => each === step || order.before(step, each))
      .flatMap((each) => notAfter[each] ?? []);
    years.set(step, [
      floors.length > 0 ? Math.max(...floors) : undefined,
      ceilings.length > 0 ? Math.min(...ceilings) : undefined,
    ]);
  }
  const conflicts = Object.entries(notBefore).flatMap(([early, from]) =>
    Object.entries(notAfter)
      .filter(([late, to]) => to < from && (early === late || order.before(early, late)))
      .map(([late, to]) => ({ notBefore: early, from, notAfter: late, to })),
  );
  return { years, conflicts };
}
