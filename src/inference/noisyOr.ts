/**
 * A table for an effect that any of several causes can bring about, each by itself.
 *
 * Method: P(effect) = 1 − (1 − leak) Π (1 − link) over the active causes. Rows in row-major order, each cause's
 * states being active, not; the effect's states being present, absent.
 *
 * @param links  for each cause the probability that it alone brings the effect about, 0–1
 * @param leak   the probability that the effect comes with no cause active, 0–1
 * @throws RangeError if a number is outside 0 to 1
 * @source Henrion (1989), Díez (1993): from memory
 */
export function noisyOr(links: readonly number[], leak = 0): number[][] {
  for (const share of [leak, ...links]) {
    if (!(share >= 0 && share <= 1))
      throw new RangeError(`noisyOr needs probabilities from 0 to 1, got ${share}`);
  }
  const absent = links.reduce((rows, link) => rows.flatMap((row) => [row * (1 - link), row]), [1 - leak]);
  return absent.map((row) => [1 - row, row]);
}
