/**
 * A ring among things that follow from others, first and last the same; undefined where there is none.
 *
 * @param givens  for each id, the ids it follows from; each of them a key too
 */
export function findCycle(givens: ReadonlyMap<string, readonly string[]>): string[] | undefined {
  const free = new Set<string>();
  let moved = true;
  while (moved) {
    moved = false;
    for (const [id, from] of givens) {
      if (free.has(id) || !from.every((each) => free.has(each))) continue;
      free.add(id);
      moved = true;
    }
  }
  const start = [...givens.keys()].find((id) => !free.has(id));
  return start === undefined ? undefined : walkRing(start, givens, free);
}

/** Every id left has a given that is left too: following those must come round. */
function walkRing(
  start: string,
  givens: ReadonlyMap<string, readonly string[]>,
  free: ReadonlySet<string>,
): string[] {
  const walked: string[] = [];
  let at: string = start;
  while (!walked.includes(at)) {
    walked.push(at);
    at = givens.get(at)?.find((id) => !free.has(id)) ?? start;
  }
  return [at, ...walked.slice(walked.indexOf(at)).reverse()];
}
