import type { Context, MiddlewareHandler } from 'hono';
import type { Door } from './door/door.ts';
import { faultAnswer } from './faultAnswer.ts';

const contentPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self' blob:",
  "manifest-src 'self'",
  "form-action 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ');

const answerHeaders = {
  'content-security-policy': contentPolicy,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-resource-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
  'x-frame-options': 'DENY',
  'permissions-policy': 'camera=(self), microphone=(), geolocation=()',
};

/**
 * The worker that finds the scale card runs a vision library that writes functions of its own as it starts. It alone may, and it
 * may load nothing else: a worker goes by the policy that came with its file, not by the page's.
 */
const visionPolicy =
  "default-src 'none'; script-src 'self' 'unsafe-eval'; base-uri 'none'; frame-ancestors 'none'";
const visionFile = /^\/assets\/visionWorker-[\w-]+\.js$/;

/** What every answer carries: a page of ours may load only what is ours, and no other page may load us. */
export const answerWithPolicy: MiddlewareHandler = async (context, next) => {
  await next();
  for (const [name, value] of Object.entries(answerHeaders)) context.header(name, value);
  if (visionFile.test(context.req.path)) context.header('content-security-policy', visionPolicy);
};

/**
 * Turns away what another web page could send here from the user's own browser: a strange Host (a name rebound to this
 * machine), anything asked of the record from another origin, a question too (it may start long work), and a change without
 * the header that only our own pages set. A page of ours, an address that is typed or kept as a bookmark, and a program
 * that is no browser are answered.
 */
export function onlyOurPages(door: Door): MiddlewareHandler {
  return async (context, next) => {
    const host = context.req.header('host') ?? new URL(context.req.url).host;
    if (!door.isOwnName(host.replace(/:\d+$/, '').toLowerCase())) {
      return faultAnswer(
        context,
        403,
        'server.strange-host',
        `This address is not one that Underside answers to: ${door.instead}`,
      );
    }
    const own = `${door.scheme}://${host}`;
    const { method, path } = context.req;
    if (method === 'GET' || method === 'HEAD') {
      // The screens hold nothing of the record, and a link to them may stand anywhere.
      const isScreen = !path.startsWith('/api') && path !== '/knowledge.json';
      return isScreen || !isForeign(context, own)
        ? next()
        : otherPage(context, 'Only the pages of Underside itself may ask this: open it there.');
    }
    return isForeign(context, own) || context.req.header('x-underside') !== '1'
      ? otherPage(context, 'Only the pages of Underside itself may change the record.')
      : next();
  };
}

/**
 * Whether a browser says that another page asks. Every current browser says so itself (Sec-Fetch-Site); of one that does
 * not, the Origin or the Referer is looked at. Our own pages send no Referer.
 *
 * @source W3C, Fetch Metadata Request Headers; RFC 6454 (Origin); RFC 9110, 10.1.3 (Referer)
 */
function isForeign({ req }: Context, own: string): boolean {
  const site = req.header('sec-fetch-site');
  if (site === 'cross-site' || site === 'same-site') return true;
  const origin = req.header('origin');
  if (origin !== undefined && origin !== own) return true;
  const referer = req.header('referer');
  return site === undefined && referer !== undefined && referer !== own && !referer.startsWith(`${own}/`);
}

function otherPage(context: Context, words: string): Response {
  return faultAnswer(context, 403, 'server.other-page', words);
}
