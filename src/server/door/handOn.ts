import type { Context, Hono } from 'hono';
import type { Visitor } from '../access/visitor.ts';

/**
 * Hands a question on to the house, and tells it who asks; somebody not known may ask for screens only.
 *
 * @param body  JSON in place of what came, where the door read it
 */
export function handOn(
  house: Hono,
  context: Context,
  visitor: Visitor | undefined,
  body?: string,
): Response | Promise<Response> {
  return house.fetch(body === undefined ? context.req.raw : withBody(context.req.raw, body), {
    ...context.env,
    visitor,
  });
}

function withBody({ url, method, headers }: Request, body: string): Request {
  const kept = new Headers(headers);
  kept.delete('content-length');
  kept.delete('transfer-encoding');
  return new Request(url, { method, headers: kept, body });
}
