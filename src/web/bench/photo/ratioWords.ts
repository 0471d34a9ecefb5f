/** A ratio in words that keep its side: `12 to 1 for`, `4 to 1 against`. */
export function ratioWords(ratio: number): string {
  if (ratio > 0.95 && ratio < 1.05) return 'neither for nor against';
  const [large, side] = ratio >= 1 ? [ratio, 'for'] : [1 / ratio, 'against'];
  return `${large >= 10 ? Math.round(large) : Number(large.toFixed(1))} to 1 ${side}`;
}
