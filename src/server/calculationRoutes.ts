import { Hono } from 'hono';
import type { CalculationResult } from '../calculations/define.ts';
import { picturesOf } from '../calculations/runById.ts';
import { isSha256 } from '../record/photoPaths.ts';
import type { PhotoFolder } from '../record/photos.ts';
import { faultAnswer, faultsAnswer } from './faultAnswer.ts';
import { readJson } from './readJson.ts';

/** One calculation asked for; the year is the server's, since the calculations read no clock. */
export type CalculationQuestion = {
  id: string;
  input: unknown;
  yearNow: number;
  /** Where the photos that the input names lie. */
  picturePaths?: Record<string, string>;
};

/** Runs a calculation, here or in a thread. */
export type Calculate = (question: CalculationQuestion) => Promise<CalculationResult<unknown>>;

/** Every calculation by its id: input in, output out. */
export function calculationRoutes(calculate: Calculate, yearNow: () => number, photos: PhotoFolder): Hono {
  const routes = new Hono();
  routes.post('/:id', async (context) => {
    const input = await readJson(context);
    if (!input.ok) return faultsAnswer(context, input.faults);
    const id = context.req.param('id');
    const picturePaths: Record<string, string> = {};
    for (const name of picturesOf(id, input.value)) {
      const photo = isSha256(name) ? await photos.original(name) : undefined;
      if (photo === undefined) {
        return faultAnswer(
          context,
          422,
          'photo.not-there',
          `There is no photo ${name}: name one of the record by its SHA-256.`,
        );
      }
      picturePaths[name] = photo.path;
    }
    const result = await calculate({ id, input: input.value, yearNow: yearNow(), picturePaths });
    if (result.ok) return context.json(result.output as object);
    const isUnknown = result.faults.some((fault) => fault.code === 'calculations.unknown');
    return isUnknown ? faultsAnswer(context, result.faults, 404) : faultsAnswer(context, result.faults, 422);
  });
  routes.all('/:id', (context) =>
    faultAnswer(
      context,
      405,
      'server.post-only',
      'A calculation is asked for by POST, with its input as JSON.',
    ),
  );
  return routes;
}
