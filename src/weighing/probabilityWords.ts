/**
 * The one scale of words for how probable a thing is; printed with its bounds wherever a reading is told. `words` stand behind a
 * thing, `adverb` begins a sentence. No other words for a probability are used anywhere: a test sees to that.
 */
export const probabilityBands: readonly { from: number; words: string; adverb: string }[] = [
  { from: 0.99, words: 'almost certain', adverb: 'Almost certainly' },
  { from: 0.9, words: 'very probable', adverb: 'Very probably' },
  { from: 0.7, words: 'probable', adverb: 'Probably' },
  { from: 0.55, words: 'more probable than not', adverb: 'More probably than not' },
  { from: 0.45, words: 'about an even chance', adverb: 'As probably as not' },
  { from: 0.3, words: 'less probable than not', adverb: 'Less probably than not' },
  { from: 0.1, words: 'possible', adverb: 'Possibly' },
  { from: 0.01, words: 'improbable', adverb: 'Improbably' },
  { from: 0, words: 'very improbable', adverb: 'Very improbably' },
];

/** The whole scale in a line: `almost certain, from 99 in 100; …; very improbable, below 1 in 100`. */
export function probabilityScaleWords(): string {
  return probabilityBands
    .map(({ from, words }, index) =>
      from > 0
        ? `${words}, from ${outOf(from)}`
        : `${words}, below ${outOf(probabilityBands[index - 1]?.from ?? 0)}`,
    )
    .join('; ');
}

/** The band a probability falls in; a bound belongs to the band above it. */
export function probabilityBand(probability: number): (typeof probabilityBands)[number] {
  const band = probabilityBands.find((each) => probability >= each.from);
  if (band === undefined) throw new RangeError(`a probability lies between 0 and 1, got ${probability}`);
  return band;
}

/**
 * A probability as a count that can be pictured: `97 in 100`. Elicited figures carry no more than 999 in 1000, so what
 * lies beyond is shown as that bound.
 */
export function outOf(probability: number): string {
  const held = Math.min(0.999, Math.max(0.001, probability));
  if (held >= 0.995 || held < 0.01) return `${Math.round(held * 1000)} in 1000`;
  return `${Math.round(held * 100)} in 100`;
}

/** What the spans told of a curve hold: the shortest that hold half of the probability, and 90 in 100 of it. */
export const toldShares = { half: 0.5, most: 0.9 } as const;

/** A probability in words of the scale with its count: `very probable (90 in 100)`. */
export function probableWords(probability: number): string {
  return `${probabilityBand(probability).words} (${outOf(probability)})`;
}

/** That no reading of the list is what happened: `Possibly none of the readings explains the findings`. */
export function noneInWords(probability: number): string {
  return `${probabilityBand(probability).adverb} none of the readings explains the findings`;
}

/** What a span holds, in words of the scale with the count: `Very probably between 1760 and 1790 (90 in 100)`. */
export function probablyThat(share: number, span: string): string {
  return `${probabilityBand(share).adverb} ${span} (${outOf(share)})`;
}

/** A range of probabilities: `from 90 in 100 to 97 in 100`. */
export function outOfRange(low: number, high: number): string {
  return `from ${outOf(low)} to ${outOf(high)}`;
}
