/** One state of the habits still open when a clique is taken up. */
export type PlanState = {
  /** Where it stands among the states held before, and among those held afterwards. */
  before: number;
  after: number;
  /** Its number among all states of the group, habits not open taken as not shown. */
  whole: number;
  /** Habits that come in with this clique: their numbers in the group, and whether they are shown. */
  fresh: readonly (readonly [habit: number, shown: boolean])[];
};

/** The order in which the cliques of a group are multiplied, each habit summed out as soon as no later clique asks for it. */
export type GroupPlan = readonly { clique: number; held: number; states: readonly PlanState[] }[];

/**
 * Plans the summing out of a group's habits.
 *
 * Method: variable elimination, the clique that opens fewest habits next.
 *
 * @param asks  by clique of the group, the habits it hangs on (a bit each, by number in the group)
 */
export function groupPlan(asks: readonly number[]): GroupPlan {
  const left = new Set(asks.keys());
  let open = 0;
  const plan: { clique: number; held: number; states: PlanState[] }[] = [];
  while (left.size > 0) {
    const clique = [...left].reduce((best, each) =>
      countBits(open | (asks[each] as number)) < countBits(open | (asks[best] as number)) ? each : best,
    );
    left.delete(clique);
    const during = open | (asks[clique] as number);
    const later = [...left].reduce((all, each) => all | (asks[each] as number), 0);
    const kept = during & later;
    const fresh = bitList(during & ~open);
    const before = open;
    const [heldBefore, heldAfter] = [bitList(before), bitList(kept)];
    const states = subsetsOf(during).map((whole) => ({
      whole,
      before: packed(whole, heldBefore),
      after: packed(whole, heldAfter),
      fresh: fresh.map((habit) => [habit, ((whole >> habit) & 1) === 1] as const),
    }));
    plan.push({ clique, held: 2 ** countBits(kept), states });
    open = kept;
  }
  return plan;
}

/** All sets of the bits of a mask, rising. */
export function subsetsOf(mask: number): number[] {
  const all = [0];
  for (let set = (0 - mask) & mask; set !== 0; set = (set - mask) & mask) all.push(set);
  return all;
}

function bitList(mask: number): number[] {
  const bits: number[] = [];
  for (let bit = 0; mask >>> bit !== 0 && bit < 32; bit++) if (((mask >>> bit) & 1) === 1) bits.push(bit);
  return bits;
}

function countBits(mask: number): number {
  return bitList(mask).length;
}

/** The given bits of a set, pushed together. */
function packed(set: number, bits: readonly number[]): number {
  return bits.reduce((all, bit, index) => all | (((set >> bit) & 1) << index), 0);
}
