import { classes, type Judged } from './judgeCase.ts';

/** One band of given probabilities: how many classes fell into it, what they were given on average, how many came true. */
export type Band = { low: number; high: number; classes: number; given: number; cameTrue: number };

/** How often a class came true among those given a probability in each band, over all cases with a verdict and all classes. */
export function calibrationBands(judged: readonly Judged[]): Band[] {
  const bounds = [0, 0.05, 0.2, 0.4, 0.6, 0.8, 1.0001];
  return bounds.slice(1).map((high, i) => {
    const low = bounds[i] ?? 0;
    const inBand = judged.flatMap((each) =>
      each.truth === undefined
        ? []
        : classes
            .filter((id) => each.probabilities[id] >= low && each.probabilities[id] < high)
            .map((id) => ({ given: each.probabilities[id], true: id === each.truth })),
    );
    return {
      low,
      high: Math.min(1, high),
      classes: inBand.length,
      given: inBand.reduce((sum, each) => sum + each.given, 0) / Math.max(1, inBand.length),
      cameTrue: inBand.filter((each) => each.true).length,
    };
  });
}

/**
 * The bands as a plot: given probability across, share come true upwards, with a 90 % interval for each band's few cases.
 *
 * @source Wilson's interval (1927) with z = 1.645, from memory
 */
export function calibrationPlot(bands: readonly Band[]): string {
  const size = 320;
  const edge = 40;
  const x = (p: number) => (edge + p * (size - 2 * edge)).toFixed(1);
  const y = (p: number) => (size - edge - p * (size - 2 * edge)).toFixed(1);
  const marks = bands
    .filter((band) => band.classes > 0)
    .map((band) => {
      const [low, high] = wilson(band.cameTrue, band.classes);
      const share = band.cameTrue / band.classes;
      return `<line x1="${x(band.given)}" x2="${x(band.given)}" y1="${y(low)}" y2="${y(high)}" stroke="#6b4326"/><circle cx="${x(band.given)}" cy="${y(share)}" r="4" fill="#1d5a6f"><title>${band.cameTrue} of ${band.classes}</title></circle>`;
    });
  const ticks = [0, 0.25, 0.5, 0.75, 1].map(
    (p) =>
      `<text x="${x(p)}" y="${size - edge + 16}" text-anchor="middle">${p}</text><text x="${edge - 6}" y="${Number(y(p)) + 4}" text-anchor="end">${p}</text>`,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size} ${size}" width="${size}" height="${size}" font-family="sans-serif" font-size="11" role="img" aria-label="Given probability against the share that came true, with the middle 90 % of each">
<rect width="${size}" height="${size}" fill="#fdfaf3"/><path d="M${x(0)} ${y(1)}V${y(0)}H${x(1)}" fill="none" stroke="#8a7f73"/><line x1="${x(0)}" y1="${y(0)}" x2="${x(1)}" y2="${y(1)}" stroke="#8a7f73" stroke-dasharray="4 4"/>
${marks.join('\n')}
${ticks.join('')}
<text x="${size / 2}" y="${size - 6}" text-anchor="middle">probability given</text><text transform="translate(11 ${size / 2}) rotate(-90)" text-anchor="middle">share come true</text>
</svg>
`;
}

function wilson(hits: number, of: number): [number, number] {
  const z2 = 1.645 ** 2;
  const middle = (hits + z2 / 2) / (of + z2);
  const half = (1.645 * Math.sqrt((hits * (of - hits)) / of + z2 / 4)) / (of + z2);
  return [Math.max(0, middle - half), Math.min(1, middle + half)];
}
