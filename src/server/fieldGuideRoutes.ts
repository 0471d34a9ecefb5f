import { Hono } from 'hono';
import type { Knowledge } from '../knowledge/schema.ts';
import type { GuideOf } from '../opinion/fieldGuide.ts';
import { faultAnswer } from './faultAnswer.ts';

/** Sets a guide as a PDF, when its turn comes; undefined where there is no such form or family. */
export type SetGuide = (of: GuideOf) => Promise<Uint8Array | undefined>;

/** The guide to print: `/field-guide.pdf?form=side-chair`, or `?family=saw-marks` for the signs of one family. */
export function fieldGuideRoutes(knowledge: () => Knowledge, setGuide: SetGuide): Hono {
  const routes = new Hono();
  routes.get('/field-guide.pdf', async (context) => {
    const { form, family } = context.req.query();
    const of: GuideOf = form === undefined ? { family: family ?? '' } : { form };
    const { forms, families } = knowledge();
    const isThere =
      'form' in of ? Object.hasOwn(forms, of.form) : families.some(({ id }) => id === of.family);
    const guide = isThere ? await setGuide(of) : undefined;
    if (guide === undefined)
      return faultAnswer(
        context,
        404,
        'server.no-such-guide',
        'There is no such form or family of signs: choose one in the reference books.',
      );
    const name = (form ?? family ?? '').replaceAll(/[^a-z0-9-]/g, '');
    return context.body(new Uint8Array(guide), 200, {
      'content-type': 'application/pdf',
      'content-disposition': `inline; filename="field-guide-${name}.pdf"`,
    });
  });
  return routes;
}
