/**
 * Words for a weight of evidence, printed wherever they are used.
 *
 * The bands follow the example scale of the European forensic institutes' guideline of 2015 as it is remembered: the
 * guideline itself was not opened, two of its bands were confirmed by a teaching page. A bound belongs to the band above it.
 */
export type ScaleBand = { fromDecibans: number; toDecibans: number | null; words: string; adverb: string };

export const verbalScale: { name: string; standing: string; bands: readonly ScaleBand[] } = {
  name: 'Scale of support, seven bands',
  standing:
    'After the example scale of the ENFSI guideline for evaluative reporting (2015), not verified against its text; a value on a bound belongs to the band above it.',
  bands: [
    { fromDecibans: 0, toDecibans: 1, words: 'no support either way', adverb: 'for neither' },
    { fromDecibans: 1, toDecibans: 10, words: 'weak support', adverb: 'weakly' },
    { fromDecibans: 10, toDecibans: 20, words: 'moderate support', adverb: 'moderately' },
    { fromDecibans: 20, toDecibans: 30, words: 'moderately strong support', adverb: 'moderately strongly' },
    { fromDecibans: 30, toDecibans: 40, words: 'strong support', adverb: 'strongly' },
    { fromDecibans: 40, toDecibans: 60, words: 'very strong support', adverb: 'very strongly' },
    { fromDecibans: 60, toDecibans: null, words: 'extremely strong support', adverb: 'extremely strongly' },
  ],
};

/** The band a weight falls in, its sign left aside. Below one deciban nothing can be felt (Good, from memory). */
export function scaleBand(decibans: number): ScaleBand {
  const size = Math.abs(decibans);
  const band = verbalScale.bands.findLast((each) => size >= each.fromDecibans);
  return band ?? (verbalScale.bands[0] as ScaleBand);
}

/** "moderate support for a period piece rather than a later piece": the weight in words, naming the side it favours. */
export function weightWords(decibans: number, side: string, otherSide: string): string {
  const band = scaleBand(decibans);
  if (Math.abs(decibans) < 1) return band.words;
  return decibans > 0
    ? `${band.words} for ${side} rather than ${otherSide}`
    : `${band.words} for ${otherSide} rather than ${side}`;
}
