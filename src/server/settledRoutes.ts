import { type Context, Hono } from 'hono';
import { z } from 'zod';
import { refuse } from '../ground/fault.ts';
import type { ReckonedCase } from '../learning/runningScore.ts';
import { bitsOf } from '../learning/standing.ts';
import type { ReadingId } from '../piece/readings.ts';
import type { LearningState, SettledLearning } from '../record/settledLearning.ts';
import type { RecordStore } from '../record/store.ts';
import { faultsAnswer } from './faultAnswer.ts';
import type { JobStep, Jobs } from './jobs.ts';
import { readBody, readJson } from './readJson.ts';

/** Reckons settled cases by the knowledge without any of them. */
export type Reckon = (
  question: ReturnType<SettledLearning['question']>,
  onStep: (step: JobStep) => void,
) => Promise<ReckonedCase[]>;

/** One settled case as the page lists it; `fixedBits` and `learnedBits` only where it was reckoned and could be weighed. */
export type ListedCase = {
  piece: string;
  title: string;
  form: string;
  on: string;
  weight: number;
  verdict: readonly ReadingId[];
  leftOut: boolean;
  counted?: number;
  fixedBits?: number;
  learnedBits?: number;
};

/** What the page of settled cases shows. */
export type SettledAnswer = Omit<LearningState, 'reckoned' | 'leftOut'> & { cases: ListedCase[] };

/** The user's settled cases: listed, reckoned, left out one by one, and the figures learned from them switched on or off. */
export function settledRoutes(
  learning: SettledLearning,
  { store, jobs, reckon }: { store: RecordStore; jobs: Jobs; reckon: Reckon },
): Hono {
  const routes = new Hono();
  const tell = (context: Context) => context.json(settledAnswer(learning, store));
  routes.get('/', tell);
  routes.post('/reckon', (context) => {
    const { fault } = learning.state();
    if (fault !== undefined) return faultsAnswer(context, refuse('learning.file-has-a-slip', fault).faults);
    const question = learning.question();
    const work = async (onStep: (step: JobStep) => void) => {
      learning.keep(question, await reckon(question, onStep));
      return new Uint8Array();
    };
    return context.json({ job: jobs.begin(work, 'settled-cases') }, 202);
  });
  routes.post('/use', async (context) => {
    const body = readBody(await readJson(context), z.strictObject({ on: z.boolean() }));
    if (!body.ok) return faultsAnswer(context, body.faults);
    const used = learning.use(body.value.on);
    return used.ok ? tell(context) : faultsAnswer(context, used.faults);
  });
  routes.post('/leave-out', async (context) => {
    const body = readBody(await readJson(context), z.strictObject({ piece: z.string(), out: z.boolean() }));
    if (!body.ok) return faultsAnswer(context, body.faults);
    const left = learning.leaveOut(body.value.piece, body.value.out);
    return left.ok ? tell(context) : faultsAnswer(context, left.faults);
  });
  return routes;
}

function settledAnswer(learning: SettledLearning, store: RecordStore): SettledAnswer {
  const { reckoned, leftOut, ...state } = learning.state();
  return {
    ...state,
    cases: learning.cases().map(({ piece, on, weight, verdict, found }) => {
      const mine = reckoned.find((each) => each.piece === piece);
      return {
        piece,
        title: store.piece(piece)?.piece.title ?? '',
        form: found.form,
        on,
        weight,
        verdict,
        leftOut: leftOut.includes(piece),
        ...(mine === undefined ? {} : { counted: mine.counts.reduce((sum, { of }) => sum + of, 0) }),
        ...(mine?.fixed === undefined || mine.learned === undefined
          ? {}
          : { fixedBits: bitsOf(mine.fixed), learnedBits: bitsOf(mine.learned) }),
      };
    }),
  };
}
