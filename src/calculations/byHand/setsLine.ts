import { z } from 'zod';
import type { Fault } from '../../ground/fault.ts';
import { refuse } from '../../ground/fault.ts';
import { fitLine } from '../../sets/fitLine.ts';
import { defineCalculation } from '../define.ts';

const number = z.number().min(-1e12).max(1e12);

const input = z.strictObject({
  /** What is to be explained: a measure of each piece. */
  y: z.array(number).min(2).max(10_000),
  /** What explains it: one row for each piece, one number for each cause. */
  x: z.array(z.array(number).min(1).max(20)).min(2).max(10_000),
  /** With one cause: its powers up to this one are causes as well. */
  degree: z.int().min(1).max(10).default(1),
  /** False where the line has to run through nothing at nothing. */
  intercept: z.boolean().default(true),
});
type Input = z.infer<typeof input>;

/** `sets.line`: see its own fields. */
export const setsLine = defineCalculation({
  id: 'sets.line',
  answers: 'Which line (or plane, or curve of powers) runs through these measures best, and how sure is it?',
  method:
    'Least squares by orthogonal decomposition on scaled columns, refined once. coefficients stand in the order of the causes, the constant first where there is one; ' +
    'coefficientSd is the standard uncertainty of each; residualSd has n − p degrees of freedom; rSquared is about the mean with a constant, about 0 without. ' +
    'It takes the causes as known and the errors as alike and independent: one wild measure moves it, see sets.statistics first.',
  source: 'Least squares, Gauss (1809); the decomposition after Björck (1996); from memory.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    coefficients: z.array(z.number()),
    coefficientSd: z.array(z.number()),
    residualSd: z.number(),
    rSquared: z.number(),
  }),
  example: { y: [455, 461, 470, 474, 483], x: [[530], [540], [555], [560], [575]] },
  run: (asked) => {
    const fault = misfit(asked);
    if (fault !== undefined) return { ok: false, faults: [fault] };
    const columns = columnsOf(asked);
    if (asked.y.length < columns.length)
      return refuse(
        'sets.too-few',
        `A line of ${columns.length} numbers needs as many pieces at least.`,
        'y',
      );
    const fitted = fitLine(columns, asked.y, asked.intercept);
    if (fitted === undefined)
      return refuse(
        'sets.not-settled',
        'These causes do not settle the line: one of them is always the same or follows from the others; take it out.',
        'x',
      );
    return { ok: true, output: fitted };
  },
});

function columnsOf({ y, x, degree, intercept }: Input): number[][] {
  const causes = (x[0] as number[]).map((_, j) => x.map((row) => row[j] as number));
  const powers =
    degree === 1
      ? causes
      : Array.from({ length: degree }, (_, k) => (causes[0] as number[]).map((value) => value ** (k + 1)));
  return [...(intercept ? [y.map(() => 1)] : []), ...powers];
}

function misfit({ y, x, degree }: Input): Fault | undefined {
  const width = (x[0] as number[]).length;
  if (x.length !== y.length)
    return {
      code: 'sets.rows',
      path: 'x',
      message: `There are ${y.length} measures and ${x.length} rows of causes: give one row for each.`,
    };
  if (x.some((row) => row.length !== width))
    return {
      code: 'sets.rows',
      path: 'x',
      message: 'Every row of causes needs as many numbers as the first.',
    };
  if (degree > 1 && width > 1)
    return {
      code: 'sets.powers',
      path: 'degree',
      message: 'Powers go with one cause: give one number a row, or leave degree out.',
    };
  return undefined;
}
