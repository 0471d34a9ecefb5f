import { Hono } from 'hono';
import { z } from 'zod';
import { faultAnswer, faultsAnswer } from '../faultAnswer.ts';
import { readJson } from '../readJson.ts';
import type { BackupKeeper } from './backupKeeper.ts';

const choice = z.strictObject({ folder: z.string().max(1000).optional(), daily: z.boolean().optional() });

/** The back-ups: how they stand, one begun, where they go. */
export function backupRoutes(keeper: BackupKeeper): Hono {
  const routes = new Hono();
  routes.get('/', async (context) => context.json(await keeper.status()));
  routes.post('/', (context) => context.json({ job: keeper.begin('hand') }, 202));
  routes.post('/settings', async (context) => {
    const came = await readJson(context);
    if (!came.ok) return faultsAnswer(context, came.faults);
    const read = choice.safeParse(came.value);
    if (!read.success)
      return faultAnswer(
        context,
        422,
        'server.bad-request',
        'A folder and whether copies are made daily come in here.',
      );
    const chosen = await keeper.choose({ ...read.data, folder: read.data.folder?.trim() });
    return chosen.ok ? context.json(await keeper.status()) : faultsAnswer(context, chosen.faults);
  });
  return routes;
}
