// biome-ignore-all format: written by a script
/**
 * What published cases were given: natural logarithms of the likelihood ratio of period work against later from even odds, by what
 * their verdict in print was. Written by `npm run validate` from the second set of test/reference; see docs/validation-second.md.
 */
export const publishedRatios: { period: readonly number[]; later: readonly number[] } = {
  period: [
    -3.636, -1.973, -0.982, -0.671, -0.001, 0, 0, 0.139, 0.243, 0.295, 0.295, 0.418, 0.517, 0.525, 0.612,
    0.67, 0.748, 0.805, 0.885, 0.916, 1.014, 1.147, 1.159, 1.172, 1.188, 1.562, 1.646, 1.723, 1.753, 1.863,
    1.917, 2.233, 2.683, 2.899, 2.929, 4.898, 5.6,
  ],
  later: [
    -5.52, -4.056, -3.963, -3.467, -1.789, -1.701, -1.064, -0.921, -0.585, -0.473, 0.029, 0.133, 1.729,
  ],
};
