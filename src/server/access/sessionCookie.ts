import type { Context } from 'hono';
import { deleteCookie, getCookie, setCookie } from 'hono/cookie';
import type { Session } from './accessFile.ts';

/**
 * The cookie of a session. Its prefix lets a browser take it only over https, from this host and for all of it.
 *
 * @source IETF, draft-ietf-httpbis-rfc6265bis, 4.1.3.2 (the prefix __Host-)
 */
const name = 'underside';

export function readSession(context: Context): string | undefined {
  return getCookie(context, name, 'host');
}

export function writeSession(context: Context, token: string, { begun, ends }: Session): void {
  setCookie(context, name, token, {
    prefix: 'host',
    path: '/',
    secure: true,
    httpOnly: true,
    sameSite: 'Strict',
    maxAge: Math.floor((ends - begun) / 1000),
  });
}

export function dropSession(context: Context): void {
  deleteCookie(context, name, { prefix: 'host', path: '/', secure: true });
}
