import { Hono } from 'hono';
import { answerWithPolicy, onlyOurPages } from '../guard.ts';
import type { Door } from './door.ts';
import { handOn } from './handOn.ts';

/** Names under which this machine speaks to itself; any other name in Host is a page that points its own name at us. */
const ownNames = new Set(['127.0.0.1', 'localhost', '[::1]']);

const door: Door = {
  scheme: 'http',
  isOwnName: (name) => ownNames.has(name),
  instead: 'open it as 127.0.0.1 or localhost.',
};

/**
 * The door for whoever sits at this computer: it is listened to on loopback only, and asks for nothing.
 *
 * @param here  what can be done at the computer itself only, under /api/access
 */
export function homeDoor(house: Hono, here?: Hono): Hono {
  const app = new Hono();
  app.use(answerWithPolicy);
  app.use(onlyOurPages(door));
  if (here !== undefined) app.route('/api/access', here);
  app.all('*', (context) => handOn(house, context, { door: 'home' }));
  return app;
}
