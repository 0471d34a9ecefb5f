import type { Judged } from './judgeCase.ts';

const later = ['later-copy', 'made-to-deceive'];

/** The ratios of period work against later that cases with a definite verdict were given, as the file that the program reads. */
export function publishedRatiosFile(judged: readonly Judged[]): string {
  // A piece put together from old ones is neither of the period nor a later copy.
  const definite = judged.filter(({ truth }) => truth !== undefined && truth !== 'made-up');
  const logs = (isLater: boolean) =>
    definite
      .filter(({ truth }) => later.includes(truth ?? '') === isLater)
      .map(({ logRatio }) => Number(logRatio.toFixed(3)))
      .sort((a, b) => a - b);
  const list = (name: string, isLater: boolean) => `  ${name}: [\n${wrapped(logs(isLater))}  ],\n`;
  return `// biome-ignore-all format: written by a script
/**
 * What published cases were given: natural logarithms of the likelihood ratio of period work against later from even odds, by what
 * their verdict in print was. Written by \`npm run validate\` from the second set of test/reference; see docs/validation-second.md.
 */
export const publishedRatios: { period: readonly number[]; later: readonly number[] } = {
${list('period', false)}${list('later', true)}};
`;
}

/** Numbers in lines of at most fifteen. */
function wrapped(numbers: readonly number[]): string {
  const lines = Array.from({ length: Math.ceil(numbers.length / 15) }, (_, line) =>
    numbers.slice(15 * line, 15 * line + 15),
  );
  return lines.map((line) => `    ${line.join(', ')},\n`).join('');
}
