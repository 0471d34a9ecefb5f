import { Hono } from 'hono';
import { makeScaleCard } from '../opinion/makeScaleCard.ts';
import { faultAnswer } from './faultAnswer.ts';

/** The scale card to print: `/scale-card.pdf?paper=a4` or `letter`. */
export function scaleCardRoutes(): Hono {
  const routes = new Hono();
  routes.get('/scale-card.pdf', async (context) => {
    const paper = context.req.query('paper') ?? 'a4';
    if (paper !== 'a4' && paper !== 'letter')
      return faultAnswer(
        context,
        400,
        'server.no-such-paper',
        'The scale card is made for the papers a4 and letter: ask for one of them.',
      );
    const pdf = await makeScaleCard(paper);
    return context.body(new Uint8Array(pdf), 200, {
      'content-type': 'application/pdf',
      'content-disposition': `inline; filename="scale-card-${paper}.pdf"`,
    });
  });
  return routes;
}
