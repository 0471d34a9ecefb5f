import { Hono } from 'hono';
import type { Knowledge } from '../knowledge/schema.ts';
import { fieldGuide } from '../opinion/fieldGuide.ts';
import { makeFieldGuide } from '../opinion/makeFieldGuide.ts';
import { faultAnswer } from './faultAnswer.ts';

/** The guide to print: `/field-guide.pdf?form=side-chair`, or `?family=saw-marks` for the signs of one family. */
export function fieldGuideRoutes(knowledge: () => Knowledge): Hono {
  const routes = new Hono();
  routes.get('/field-guide.pdf', async (context) => {
    const { form, family } = context.req.query();
    const of = form === undefined ? { family: family ?? '' } : { form };
    const guide = fieldGuide(of, knowledge());
    if (guide === undefined)
      return faultAnswer(
        context,
        404,
        'server.no-such-guide',
        'There is no such form or family of signs: choose one in the reference books.',
      );
    const name = (form ?? family ?? '').replaceAll(/[^a-z0-9-]/g, '');
    return context.body(new Uint8Array(await makeFieldGuide(guide)), 200, {
      'content-type': 'application/pdf',
      'content-disposition': `inline; filename="field-guide-${name}.pdf"`,
    });
  });
  return routes;
}
