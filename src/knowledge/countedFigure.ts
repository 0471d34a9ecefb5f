import { betaOfRange, rangeOfBeta } from '../ground/betaDistribution.ts';
import type { Counting, Figure } from './figureSchema.ts';
import { figureNumbers } from './figuresOf.ts';
import { in100 } from './in100.ts';

/**
 * The figures of an entry with what was counted taken in: where one carries `counts`, its text becomes the mean and the 5th and 95th
 * percentile of Beta(a + w · seen, b + w · (of − seen)), and `judged` keeps the text it had.
 *
 * Beta(a, b) is the judged figure as its range says, at most as strong as `judgedAtMost` records; w is what one record of a
 * collection weighs against one of a random sample.
 */
export function withCounts<Value>(value: Value, how: Counting): Value {
  if (value === null || typeof value !== 'object') return value;
  if (Array.isArray(value)) return value.map((each) => withCounts(each, how)) as Value;
  const fields = Object.fromEntries(Object.entries(value).map(([key, each]) => [key, withCounts(each, how)]));
  const isCounted = typeof fields.in100 === 'string' && fields.counts !== undefined;
  return (isCounted ? countedFigure(fields as Figure, how) : fields) as Value;
}

/** One figure with its counts taken in; as it is where it has none, or where its range gives no distribution. */
export function countedFigure(figure: Figure, { recordWeighs, judgedAtMost }: Counting): Figure {
  const { best, low, high } = figureNumbers(figure);
  const judged = betaOfRange({ best: best / 100, low: low / 100, high: high / 100 });
  if (figure.counts === undefined || judged === undefined) return figure;
  const { seen, of } = figure.counts;
  const held = Math.min(1, judgedAtMost / (judged[0] + judged[1]));
  const a = judged[0] * held + recordWeighs * seen;
  const b = judged[1] * held + recordWeighs * (of - seen);
  const counted = rangeOfBeta([a, b]);
  const text = `${in100(counted.best)}, ${in100(counted.low)}–${in100(counted.high)}`;
  return { ...figure, in100: text, judged: figure.in100 };
}
