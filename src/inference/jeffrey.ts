/**
 * The likelihoods that bring a variable to given posterior shares: Jeffrey's rule in the terms of soft evidence.
 *
 * Method: new share over old share, state by state, on no fixed scale.
 *
 * @param before  shares as they stand
 * @param after   shares as they shall be
 * @throws RangeError if the lengths differ, or a state held impossible is to become possible
 * @source R. Jeffrey, The Logic of Decision, chapter 11: from memory
 */
export function jeffreyLikelihoods(before: readonly number[], after: readonly number[]): number[] {
  if (before.length !== after.length) {
    throw new RangeError(
      `jeffreyLikelihoods needs as many shares after as before, got ${after.length} and ${before.length}`,
    );
  }
  return before.map((share, state) => {
    const wanted = after[state] as number;
    if (share === 0 && wanted > 0)
      throw new RangeError(`jeffreyLikelihoods can’t raise state ${state} from 0`);
    return share === 0 ? 0 : wanted / share;
  });
}
