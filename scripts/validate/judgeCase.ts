import type { Knowledge } from '../../src/knowledge/schema.ts';
import { type ReadingId, readingsOfMaking } from '../../src/piece/readings.ts';
import { weighCase } from '../../src/weighing/weighCase.ts';
import type { Weighing } from '../../src/weighing/weighing.ts';
import type { MappedCase, PublishedCase, verdicts } from './publishedCases.ts';

export type Verdict = (typeof verdicts)[number];

/** The classes that a verdict in print can be told apart by: the two kinds of copy are one. */
export const classes = [
  'period-intact',
  'period-repaired',
  'period-altered',
  'made-up',
  'later-copy',
  'made-to-deceive',
] as const;
export type VerdictClass = (typeof classes)[number];

/** One published case weighed and held against its verdict. */
export type Judged = {
  id: string;
  verdict: Verdict;
  truth: VerdictClass | undefined;
  probabilities: Record<VerdictClass, number>;
  order: VerdictClass[];
  firm: boolean;
  right: boolean;
  rightInTwo: boolean;
  /** Natural logarithm of the likelihood ratio of period work against later, from even odds. */
  logRatio: number;
  traces: number;
  coveredTraces: number;
  /** Of these, those that only an observation covers which expects the same of every kind of piece. */
  silentTraces: number;
  /** What leads when only how the piece came to be is asked, and whether that is settled. */
  making: Pick<Weighing['making'], 'leading' | 'firm'>;
  weighing: Weighing;
};

const classOfVerdict: Record<Verdict, VerdictClass | undefined> = {
  'period-intact': 'period-intact',
  'period-repaired': 'period-repaired',
  'period-enhanced-or-altered': 'period-altered',
  married: 'made-up',
  'later-copy': 'later-copy',
  'deliberate-fake': 'made-to-deceive',
  undetermined: undefined,
};

const classOfReading: Record<ReadingId, VerdictClass> = {
  'period-intact': 'period-intact',
  'period-repaired': 'period-repaired',
  'period-altered': 'period-altered',
  'made-up': 'made-up',
  'later-bench-copy': 'later-copy',
  'later-machine-copy': 'later-copy',
  'made-to-deceive': 'made-to-deceive',
};

/**
 * Weighs one mapped case, feeding only findings that are traces, and holds the answer against the verdict in print.
 *
 * @throws Error if the mapping names a form, or feeds a finding that is no trace
 */
export function judgeCase(
  published: PublishedCase,
  mapped: MappedCase,
  knowledge: Knowledge,
  yearNow: number,
  draws = 500,
): Judged {
  const traces = published.findings.flatMap((each, index) => (each.level === 'trace' ? [index] : []));
  const fed = new Set([...mapped.findings, ...mapped.observations].map((each) => each.from));
  const telling = new Set([
    ...mapped.findings.map((each) => each.from),
    ...mapped.observations.flatMap(({ from, expected }) =>
      new Set(Object.values(expected)).size > 1 ? [from] : [],
    ),
  ]);
  const wrong = [...fed].find((index) => !traces.includes(index));
  if (wrong !== undefined)
    throw new Error(`${published.id}: finding ${wrong} is not a trace and may not be weighed.`);
  const { form, claim, mode, findings, observations } = mapped;
  const result = weighCase(
    {
      form,
      ...(claim === undefined ? {} : { claim }),
      mode: mode ?? 'in-hand',
      findings: findings.map(({ from: _, ...each }) => each),
      observations: observations.map(({ words, expected }, index) => ({
        id: `${index + 1}`,
        words,
        expected,
      })),
      // Who writes a piece up in print has looked it over, and tells of the mends and changes that were found.
      lookedOver: true,
      draws,
      seed: 1,
    },
    knowledge,
    { yearNow },
  );
  if (!result.ok) throw new Error(`${published.id}: ${result.faults.map((each) => each.message).join(' ')}`);
  const weighing = result.output;
  const probabilities = Object.fromEntries(classes.map((id) => [id, 0])) as Record<VerdictClass, number>;
  for (const reading of weighing.readings) probabilities[classOfReading[reading.id]] += reading.probability;
  const total = classes.reduce((sum, id) => sum + probabilities[id], 0);
  for (const id of classes) probabilities[id] /= total;
  const order = [...classes].sort((a, b) => probabilities[b] - probabilities[a]);
  const truth = classOfVerdict[published.verdict.reading];
  return {
    id: published.id,
    verdict: published.verdict.reading,
    truth,
    probabilities,
    order,
    firm: weighing.firm,
    // A verdict left open is met by not being firm.
    right: truth === undefined ? !weighing.firm : order[0] === truth,
    rightInTwo: truth === undefined ? !weighing.firm : order.slice(0, 2).includes(truth),
    logRatio: logRatioFromEven(weighing),
    traces: traces.length,
    coveredTraces: traces.filter((index) => fed.has(index)).length,
    silentTraces: traces.filter((index) => fed.has(index) && !telling.has(index)).length,
    making: weighing.making,
    weighing,
  };
}

/** The default odds are even between period and later, so posterior odds are the ratio itself. */
function logRatioFromEven(weighing: Weighing): number {
  const even = weighing.byStartingOdds.find((each) => each.odds === 'even');
  const probability = (id: ReadingId) => even?.probabilities[id] ?? 0;
  const total = (ids: readonly ReadingId[]) => ids.reduce((sum, id) => sum + probability(id), 0);
  const { 'of-the-period': period, 'later-copy': copies, 'to-deceive': fakes } = readingsOfMaking;
  return Math.log(total(period) / total([...copies, ...fakes]));
}
