import { type Context, Hono } from 'hono';
import type { Access } from '../access/access.ts';
import { namedByKey } from '../access/namedByKey.ts';
import { readSession } from '../access/sessionCookie.ts';
import { signInRoutes } from '../access/signInRoutes.ts';
import type { Visitor } from '../access/visitor.ts';
import { faultAnswer, faultsAnswer } from '../faultAnswer.ts';
import { answerWithPolicy, onlyOurPages } from '../guard.ts';
import { readJson } from '../readJson.ts';
import type { Door } from './door.ts';
import { handOn } from './handOn.ts';

/** What is done at the computer itself only: it names folders of that computer. */
const onlyAtHome = [/^\/api\/backups\/settings(\/|$)/];

/** What a page needs before anybody is known: the screens, which hold nothing of the record, and the ways to sign in. */
const isRecord = (path: string) => path === '/knowledge.json' || path === '/api' || path.startsWith('/api/');

/**
 * The door for the network: over https, and nothing of the record is answered to whoever is not signed in.
 *
 * @param names  addresses and names it answers to now, without a port
 */
export function networkDoor(house: Hono, access: Access, names: () => readonly string[]): Hono {
  const door: Door = {
    scheme: 'https',
    isOwnName: (name) => names().includes(name),
    instead: 'open it as the Devices page of the office computer says.',
  };
  const app = new Hono();
  app.use(answerWithPolicy);
  app.use(onlyOurPages(door));
  app.route('/api/access', signInRoutes(access));
  app.all('*', async (context) => {
    const visitor = visitorOfCookie(access, readSession(context));
    const path = decodedPath(context.req.path);
    if (visitor === undefined && isRecord(path))
      return faultAnswer(context, 401, 'access.signed-out', 'Sign in first: what you entered is kept.');
    if (onlyAtHome.some((each) => each.test(path)))
      return faultAnswer(
        context,
        403,
        'access.only-at-home',
        'This is set on the office computer itself, for it names a folder there.',
      );
    if (visitor === undefined || !isAct(context)) return handOn(house, context, visitor);
    const came = await readJson(context);
    if (!came.ok) return faultsAnswer(context, came.faults);
    const names = access.devices.list().map(({ name }) => name);
    return handOn(house, context, visitor, JSON.stringify(namedByKey(came.value, visitor, names)));
  });
  return app;
}

/** What may name the device it was done on: acts on a piece, and what is taken back, copied or signed. */
function isAct({ req }: Context): boolean {
  const isEmpty = req.header('content-length') === '0' || (req.raw.body ?? null) === null;
  return req.method === 'POST' && !isEmpty && decodedPath(req.path).startsWith('/api/pieces/');
}

function visitorOfCookie(access: Access, token: string | undefined): Visitor | undefined {
  const session = token === undefined ? undefined : access.sessions.find(token);
  if (session === undefined) return undefined;
  if (session.device === undefined) return { door: 'network', session };
  const device = access.devices.find(session.device);
  return device === undefined || device.shutOut !== undefined
    ? undefined
    : { door: 'network', session, device };
}

/** The path as the routes of the house may read it; one that can't be read is taken for the record's. */
function decodedPath(path: string): string {
  try {
    return decodeURIComponent(path).replaceAll(/\/{2,}/g, '/');
  } catch {
    return '/api';
  }
}
