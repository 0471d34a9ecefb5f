import { createHash } from 'node:crypto';
import type { MiddlewareHandler } from 'hono';
import { faultAnswer } from './faultAnswer.ts';

/** Names under which this machine speaks to itself; any other name in Host is a page that points its own name at us. */
const ownNames = new Set(['127.0.0.1', 'localhost', '[::1]']);

/**
 * The two styles that react-aria-components 1.22 writes into the page: how a pressed control scrolls, and how an open
 * dialog keeps the page still. Allowing these by their hashes lets every other style written into a page be refused.
 */
const knownStyles = [
  '@layer {\n  [data-react-aria-pressable] {\n    touch-action: pan-x pan-y pinch-zoom;\n  }\n}',
  '@layer {\n  * {\n    overscroll-behavior: contain;\n  }\n}',
].map((style) => `'sha256-${createHash('sha256').update(style).digest('base64')}'`);

const contentPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  `style-src 'self' ${knownStyles.join(' ')}`,
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
 * machine), a change from another origin, and a change without the header that only our own pages set.
 */
export const onlyOurPages: MiddlewareHandler = async (context, next) => {
  const host = context.req.header('host') ?? new URL(context.req.url).host;
  if (!ownNames.has(host.replace(/:\d+$/, ''))) {
    return faultAnswer(
      context,
      403,
      'server.strange-host',
      'This address is not one that Underside answers to: open it as 127.0.0.1 or localhost.',
    );
  }
  if (context.req.method === 'GET' || context.req.method === 'HEAD') return next();
  const origin = context.req.header('origin');
  const site = context.req.header('sec-fetch-site');
  const isForeign =
    (origin !== undefined && origin !== `http://${host}`) || site === 'cross-site' || site === 'same-site';
  if (isForeign || context.req.header('x-underside') !== '1') {
    return faultAnswer(
      context,
      403,
      'server.other-page',
      'Only the pages of Underside itself may change the record.',
    );
  }
  return next();
};
