// biome-ignore-all format: written by a script
/**
 * What published cases were given: natural logarithms of the likelihood ratio of period work against later from even odds, by what
 * their verdict in print was. Written by `npm run validate` from the second set of test/reference; see docs/validation-second.md.
 */
export const publishedRatios: { period: readonly number[]; later: readonly number[] } = {
  period: [
    -1.806, -0.838, -0.494, -0.215, 0.337, 0.355, 0.871, 1.043, 1.066, 1.129, 1.297, 1.304, 1.381, 1.518, 1.583,
    1.633, 1.705, 1.811, 2.045, 2.066, 2.499, 2.559, 3.214, 3.416, 3.488, 3.67, 4.17, 4.665, 4.757, 5.047,
    5.169,
  ],
  later: [
    -5.809, -5.731, -5.261, -4.513, -3.648, -3.31, -2.788, -2.556, -2.047, -1.836, -0.829, -0.739, 2.981,
  ],
};
