/**
 * Words for how strongly findings support one side against another, printed with their bounds wherever they are used.
 *
 * @source the example scale of the ENFSI guideline for evaluative reporting in forensic science (2015): likelihood ratios 1,
 *   2–10, 10–100, 100–1,000, 1,000–10,000, 10,000–1,000,000 and above. From memory: its text could not be opened; a university
 *   course prints the same bands from 100 up
 */
export type ScaleBand = {
  /** How many times more probable the findings are on one side, at least. */
  fromRatio: number;
  /** The bound that belongs to the next band; null where there is none. */
  toRatio: number | null;
  words: string;
  adverb: string;
};

export const verbalScale: { name: string; standing: string; bands: readonly ScaleBand[] } = {
  name: 'Scale of support, seven bands',
  standing:
    'After the example scale of the ENFSI guideline for evaluative reporting (2015), not verified against its text. Two things are ours: a ratio between 1 and 2, for which its table has no words, counts as no support; and a value on a bound belongs to the band above it.',
  bands: [
    { fromRatio: 1, toRatio: 2, words: 'no support either way', adverb: 'for neither' },
    { fromRatio: 2, toRatio: 10, words: 'weak support', adverb: 'weakly' },
    { fromRatio: 10, toRatio: 100, words: 'moderate support', adverb: 'moderately' },
    { fromRatio: 100, toRatio: 1_000, words: 'moderately strong support', adverb: 'moderately strongly' },
    { fromRatio: 1_000, toRatio: 10_000, words: 'strong support', adverb: 'strongly' },
    { fromRatio: 10_000, toRatio: 1_000_000, words: 'very strong support', adverb: 'very strongly' },
    { fromRatio: 1_000_000, toRatio: null, words: 'extremely strong support', adverb: 'extremely strongly' },
  ],
};

/** The band a weight in decibans falls in, its sign left aside. */
export function scaleBand(decibans: number): ScaleBand {
  const size = Math.abs(decibans);
  const band = verbalScale.bands.findLast(({ fromRatio }) => size >= decibansOf(fromRatio));
  return band ?? (verbalScale.bands[0] as ScaleBand);
}

/** Whether a weight in decibans is called support for either side at all. */
export function isSupport(decibans: number): boolean {
  return scaleBand(decibans) !== verbalScale.bands[0];
}

/** "moderate support for a period piece rather than a later piece": the weight in words, naming the side it favors. */
export function weightWords(decibans: number, side: string, otherSide: string): string {
  const { words } = scaleBand(decibans);
  if (!isSupport(decibans)) return words;
  return decibans > 0
    ? `${words} for ${side} rather than ${otherSide}`
    : `${words} for ${otherSide} rather than ${side}`;
}

/** The bounds of a band as likelihood ratios and in whole decibans: `10 to 100`, `10 to 20`; the last is open. */
export function boundsInWords({ fromRatio, toRatio }: ScaleBand): { ratio: string; decibans: string } {
  const range = (from: string, to: string | undefined) =>
    to === undefined ? `${from} and more` : `${from} to ${to}`;
  const whole = (ratio: number) => `${Math.round(decibansOf(ratio))}`;
  return {
    ratio: range(grouped(fromRatio), toRatio === null ? undefined : grouped(toRatio)),
    decibans: range(whole(fromRatio), toRatio === null ? undefined : whole(toRatio)),
  };
}

/** A weight as a likelihood ratio to one, its sign left aside, to two figures: `about 16 to 1`. */
export function ratioToOne(decibans: number): string {
  const ratio = Number((10 ** (Math.abs(decibans) / 10)).toPrecision(2));
  return `about ${grouped(ratio)} to 1`;
}

function decibansOf(ratio: number): number {
  return 10 * Math.log10(ratio);
}

function grouped(number: number): string {
  return `${number}`.replace(/\B(?=(\d{3})+(?!\d))/g, ',');
}
