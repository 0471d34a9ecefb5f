import type { Knowledge } from '../../src/knowledge/schema.ts';
import { type Band, calibrationBands } from './calibration.ts';
import { classes, type Judged, type VerdictClass } from './judgeCase.ts';
import type { MappedCase, PublishedCase } from './publishedCases.ts';
import { summarize } from './summary.ts';

const words: Record<VerdictClass, string> = {
  'period-intact': 'period, intact',
  'period-repaired': 'period, repaired',
  'period-altered': 'period, altered',
  'made-up': 'made up',
  'later-copy': 'later copy',
  'made-to-deceive': 'made to pass as older',
};

/**
 * The page that says how the readings met the verdicts in print, every miss with its reason in figures.
 *
 * @param remarks  how the cases were mapped, and what has to be known of it
 * @param plot  where the calibration is drawn, if it is
 */
export function validationPage(
  judged: readonly Judged[],
  cases: readonly PublishedCase[],
  mapping: Readonly<Record<string, MappedCase>>,
  knowledge: Knowledge,
  remarks: string,
  plot?: string,
): string {
  const bands = calibrationBands(judged);
  const figures = summarize(judged);
  const share = (x: number | null) => (x === null ? 'not defined' : x.toFixed(3));
  const range = (both: [number, number] | undefined) =>
    both === undefined ? 'not defined' : `${both[0].toFixed(2)}–${both[1].toFixed(2)}`;
  return `# Held against pieces that others have judged

Made by \`npm run validate\`. Only findings that are traces are fed, never a verdict on a part. The numbers are small: read
the misses, not the percentages.

${remarks}

| what | figure |
| --- | --- |
| cases with a definite verdict | ${figures.definite} |
| first reading right | ${figures.right} (${range(figures.intervals?.right)} of the cases) |
| of these with enough covered (two traces or more, and half of them) | ${figures.enough.right} of ${figures.enough.definite} |
| right among the first two | ${figures.rightInTwo} |
| settled, and of these wrong | ${figures.firm}, ${figures.firmAndWrong} |
| how it came to be, asked by itself: right | ${figures.making.right} of ${figures.definite}; ${share(figures.making.logScoreBits)} bits (2.00 is knowing nothing) |
| of that settled, and of these wrong | ${figures.making.firm}, ${figures.making.firmAndWrong} |
| condition of the pieces that are of the period: right | ${figures.condition.right} of ${figures.condition.definite}; ${share(figures.condition.logScoreBits)} bits (1.58 is knowing nothing) |
| mean log score (bits; ${Math.log2(classes.length).toFixed(2)} is knowing nothing) | ${share(figures.logScoreBits)} (${range(figures.intervals?.logScoreBits)}) |
| Brier score, halved | ${share(figures.brier)} |
| Cllr, period against later (1 is knowing nothing; pieces put together left out) | ${share(figures.cllr)}; on the best scale ${share(figures.cllrMin)} |
| traces covered by a sign or by an observation of the mapper’s own | ${figures.coveredTraces} of ${figures.traces}, of them ${figures.silentTraces} by an observation that tells nothing |

In brackets the middle 90 % over 2000 draws of as many cases, with a seed.

Knowledge ${knowledge.version}; 500 redraws, seed 1, even starting odds.

## Case by case

| case | verdict in print | first reading | second | probability of the verdict | settled | covered |
| --- | --- | --- | --- | --- | --- | --- |
${judged.map(row).join('\n')}

## Misses

${misses(judged)}

## Calibration

How often a class came true among those given a probability in each band, over all cases and classes.

| given | classes | came true |
| --- | --- | --- |
${bands.map(bandRow).join('\n')}${plot === undefined ? '' : `\n\n![Given probability against the share that came true](${plot})`}

## Traces that no sign covers

By the number of the finding in the file of the cases, from 0.

${uncovered(cases, mapping)}
`;
}

function row(each: Judged): string {
  const probability = (id: VerdictClass | undefined) =>
    id === undefined ? '–' : each.probabilities[id].toFixed(3);
  const [first, second] = each.order;
  const title = (id: VerdictClass | undefined) =>
    id === undefined ? '' : `${words[id]} (${probability(id)})`;
  return `| ${each.id} | ${each.truth === undefined ? 'left open' : words[each.truth]} | ${title(first)} ${each.right ? '✓' : '✗'} | ${title(second)} | ${probability(each.truth)} | ${each.firm ? 'settled' : 'not settled'} | ${each.coveredTraces} of ${each.traces} |`;
}

function misses(judged: readonly Judged[]): string {
  const wrong = judged.filter((each) => !each.right);
  if (wrong.length === 0) return 'None.';
  return wrong
    .map((each) => {
      const heavy = each.weighing.weights
        .toSorted((a, b) => Math.abs(b.withinWhole ?? Infinity) - Math.abs(a.withinWhole ?? Infinity))
        .slice(0, 4);
      const lines = heavy.map(
        (one) =>
          `  - ${one.sign}${one.part === null ? '' : ` on ${one.part}`}, ${one.state}: ${told(one.withinWhole)} for the first reading, ${told(one.periodAgainstLater.withinWhole)} for period work`,
      );
      return `- **${each.id}**: ${each.truth === undefined ? 'called settled though left open in print' : `${words[each.truth]} had ${each.probabilities[each.truth].toFixed(3)}`}. ${each.coveredTraces} of ${each.traces} traces were covered; the findings that weighed most:\n${lines.join('\n')}`;
    })
    .join('\n');
}

function told(decibans: number | null): string {
  return decibans === null ? 'a hard limit' : `${decibans.toFixed(1)} decibans`;
}

function bandRow({ low, high, classes: n, cameTrue }: Band): string {
  return `| ${low}–${high} | ${n} | ${n === 0 ? '–' : `${cameTrue} (${(cameTrue / n).toFixed(2)})`} |`;
}

function uncovered(cases: readonly PublishedCase[], mapping: Readonly<Record<string, MappedCase>>): string {
  const lines = cases.flatMap((each) =>
    (mapping[each.id]?.uncovered ?? []).map((index) => {
      const own = mapping[each.id]?.observations.some(({ from }) => from === index) === true;
      return `- ${each.id}: finding ${index}${own ? ', told by an observation' : ''}`;
    }),
  );
  return lines.length === 0 ? 'None.' : lines.join('\n');
}
