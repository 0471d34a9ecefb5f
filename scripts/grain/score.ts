/** Area under the ROC curve: how often a pair of one piece scores above a pair of two; ties count half. */
export function areaUnderCurve(one: readonly number[], two: readonly number[]): number {
  let above = 0;
  for (const a of one) for (const b of two) above += a > b ? 1 : a === b ? 0.5 : 0;
  return above / (one.length * two.length);
}

/** Points of the curve: the share of pairs of one piece told, when so large a share of pairs of two is let pass. */
export function rocAt(one: readonly number[], two: readonly number[], letPass: readonly number[]): number[] {
  const descending = [...two].sort((a, b) => b - a);
  return letPass.map((share) => {
    const limit = descending[Math.floor(share * descending.length)] ?? Number.NEGATIVE_INFINITY;
    return one.filter((each) => each > limit).length / one.length;
  });
}
