import type { HttpBindings } from '@hono/node-server';
import type { Context } from 'hono';

/** The address a question came from, as the socket says: what a header says of it anybody can write. */
export function callerOf(context: Context): string {
  return (context.env as Partial<HttpBindings> | undefined)?.incoming?.socket?.remoteAddress ?? 'unknown';
}
