// biome-ignore-all format: written by a script
/**
 * What published cases were given: natural logarithms of the likelihood ratio of period work against later from even odds, by what
 * their verdict in print was. Written by `npm run validate` from the second set of test/reference; see docs/validation-second.md.
 */
export const publishedRatios: { period: readonly number[]; later: readonly number[] } = {
  period: [
    -1.7, -0.893, -0.156, 0.386, 0.559, 0.944, 1.04, 1.163, 1.21, 1.268, 1.316, 1.349, 1.42, 1.712, 1.713,
    1.779, 1.809, 1.881, 2.371, 2.476, 2.975, 3.106, 3.278, 3.294, 3.368, 3.446, 4.516, 5.34, 5.665, 5.733,
    5.785,
  ],
  later: [
    -5.81, -5.807, -5.714, -4.451, -4.094, -2.97, -2.771, -2.565, -2.154, -1.734, -1.043, -0.734, 3.193,
  ],
};
