import { type Context, Hono } from 'hono';
import type { Outcome } from '../ground/fault.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import type { OwnEntry, OwnKind, OwnKnowledge } from '../record/ownKnowledge.ts';
import { faultAnswer, faultsAnswer } from './faultAnswer.ts';
import { readJson } from './readJson.ts';

/** The user's own signs and shops: listed, added, changed, taken out, and the last change taken back. */
export function ownKnowledgeRoutes(own: OwnKnowledge): Hono {
  const routes = new Hono();
  const answer = (context: Context, outcome: Outcome<Knowledge>) =>
    outcome.ok
      ? context.json({ version: own.knowledge().version, ...own.list() })
      : faultsAnswer(context, outcome.faults);
  routes.get('/', (context) => context.json({ version: own.knowledge().version, ...own.list() }));
  routes.post('/undo', (context) => answer(context, own.undo()));
  routes.put('/:kind/:id', async (context) => {
    const kind = kindOf(context.req.param('kind'));
    const input = await readJson(context);
    if (!input.ok) return faultsAnswer(context, input.faults);
    const entry = input.value;
    if (kind === undefined || typeof entry !== 'object' || entry === null || Array.isArray(entry))
      return faultAnswer(context, 422, 'own.not-an-entry', 'What came is neither a sign nor a shop file.');
    return answer(context, own.put(kind, { ...entry, id: context.req.param('id') } as OwnEntry));
  });
  routes.delete('/:kind/:id', (context) => {
    const kind = kindOf(context.req.param('kind'));
    if (kind === undefined) return faultAnswer(context, 404, 'own.no-such-kind', 'There is no such shelf.');
    return answer(context, own.remove(kind, context.req.param('id')));
  });
  return routes;
}

function kindOf(text: string): OwnKind | undefined {
  return text === 'sign' || text === 'shop' ? text : undefined;
}
