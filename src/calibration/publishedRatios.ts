// biome-ignore-all format: written by a script
/**
 * What published cases were given: natural logarithms of the likelihood ratio of period work against later from even odds, by what
 * their verdict in print was. Written by `npm run validate` from the second set of test/reference; see docs/validation-second.md.
 */
export const publishedRatios: { period: readonly number[]; later: readonly number[] } = {
  period: [
    -1.766, -0.822, -0.486, -0.215, 0.337, 0.355, 0.864, 1.036, 1.063, 1.066, 1.282, 1.304, 1.36, 1.382, 1.518,
    1.633, 1.705, 1.876, 2.058, 2.061, 2.499, 2.559, 3.481, 3.5, 3.617, 3.672, 4.17, 4.66, 4.769, 5.047,
    5.165,
  ],
  later: [
    -5.809, -5.741, -5.261, -4.528, -3.655, -3.383, -2.788, -2.548, -2.065, -1.8, -0.773, -0.77, 3.019,
  ],
};
