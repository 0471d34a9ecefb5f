// biome-ignore-all format: written by a script
/**
 * What published cases were given: natural logarithms of the likelihood ratio of period work against later from even odds, by what
 * their verdict in print was. Written by `npm run validate` from the second set of test/reference; see docs/validation-second.md.
 */
export const publishedRatios: { period: readonly number[]; later: readonly number[] } = {
  period: [
    -1.808, -0.931, -0.149, -0.13, 0.337, 0.396, 0.969, 1.026, 1.137, 1.151, 1.197, 1.234, 1.361, 1.39, 1.671,
    1.683, 1.687, 1.781, 2.337, 2.359, 2.588, 2.694, 2.995, 3.1, 3.258, 3.416, 4.507, 4.695, 4.937, 5.054,
    5.272,
  ],
  later: [
    -5.809, -5.807, -5.245, -4.409, -4.053, -2.944, -2.767, -2.608, -2.362, -2.174, -0.989, -0.741, 3.12,
  ],
};
