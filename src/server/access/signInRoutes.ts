import { type Context, Hono } from 'hono';
import { z } from 'zod';
import type { Refused } from '../../ground/fault.ts';
import { faultAnswer, faultsAnswer } from '../faultAnswer.ts';
import { readBody, readJson } from '../readJson.ts';
import { type Access, waitFault } from './access.ts';
import type { Session } from './accessFile.ts';
import { callerOf } from './callerOf.ts';
import { dropSession, readSession, writeSession } from './sessionCookie.ts';

/** How somebody stands at the door: at the computer itself, signed in over the network, or not. */
export type DoorStanding =
  | { door: 'home' }
  | { door: 'network'; signedIn: boolean; hasPassphrase: boolean; device: string | null };

const small = z.string().max(500);
const signInBody = z.strictObject({ passphrase: z.string().max(1000) });
const pairBody = z.strictObject({ code: small, name: small, publicKey: small, signature: small });
const deviceBody = z.strictObject({ device: small });
const answerBody = z.strictObject({ device: small, challenge: small, signature: small });

/** The ways in over the network: the passphrase, a code once, a device's key; and the ways out. */
export function signInRoutes(access: Access): Hono {
  const { sessions, devices, guessing } = access;
  const routes = new Hono();
  const known = (context: Context): Session | undefined => sessions.find(readSession(context) ?? '');
  /** Always with a token that is new: one that was there before, whoever put it there, is ended. */
  const letIn = async (context: Context, device?: string): Promise<void> => {
    const before = known(context);
    if (before !== undefined) await sessions.end(before.id);
    const browser = context.req.header('user-agent') ?? '';
    const { token, session } = await sessions.begin(device === undefined ? { browser } : { browser, device });
    writeSession(context, token, session);
  };
  routes.use(async (context, next) => {
    await next();
    context.header('cache-control', 'no-store');
  });
  routes.get('/standing', (context) => {
    const session = known(context);
    const device = session?.device === undefined ? undefined : devices.find(session.device);
    return context.json({
      door: 'network',
      signedIn: session !== undefined,
      hasPassphrase: access.hasPassphrase(),
      device: device?.name ?? null,
    } satisfies DoorStanding);
  });
  routes.post('/sign-in', async (context) => {
    const body = readBody(await readJson(context), signInBody);
    if (!body.ok) return faultsAnswer(context, body.faults);
    const tried = await access.tryPassphrase(body.value.passphrase, callerOf(context));
    if (!tried.ok) return refusal(context, tried);
    await letIn(context);
    return context.json({ signedIn: true });
  });
  routes.post('/pair', async (context) => {
    const body = readBody(await readJson(context), pairBody);
    if (!body.ok) return faultsAnswer(context, body.faults);
    const from = callerOf(context);
    const wait = guessing.begin(from);
    if (wait !== undefined) return refusal(context, waitFault(wait));
    const paired = await devices.pair(body.value);
    // Only a wrong code is a guess.
    if (paired.ok || paired.faults[0]?.code !== 'access.wrong-code') guessing.right(from);
    if (!paired.ok) return refusal(context, paired);
    await letIn(context, paired.value.id);
    return context.json({ id: paired.value.id, name: paired.value.name });
  });
  routes.post('/challenge', async (context) => {
    const body = readBody(await readJson(context), deviceBody);
    if (!body.ok) return faultsAnswer(context, body.faults);
    return context.json({ challenge: devices.challenge(body.value.device) });
  });
  routes.post('/device', async (context) => {
    const body = readBody(await readJson(context), answerBody);
    if (!body.ok) return faultsAnswer(context, body.faults);
    const { device, challenge, signature } = body.value;
    const answered = await devices.answer(device, challenge, signature);
    if (!answered.ok) return refusal(context, answered);
    await letIn(context, answered.value.id);
    return context.json({ name: answered.value.name });
  });
  routes.post('/sign-out', async (context) => {
    const session = known(context);
    if (session !== undefined) await sessions.end(session.id);
    dropSession(context);
    return context.json({ signedIn: false });
  });
  routes.post('/sign-out-everywhere', async (context) => {
    if (known(context) === undefined)
      return faultAnswer(context, 401, 'access.signed-out', 'Sign in first: what you entered is kept.');
    await sessions.endAll();
    dropSession(context);
    return context.json({ signedIn: false });
  });
  routes.all('*', (context) =>
    faultAnswer(context, 403, 'access.only-at-home', 'This is done on the office computer itself.'),
  );
  return routes;
}

function refusal(context: Context, refused: Refused & { waitSeconds?: number }): Response {
  if (refused.waitSeconds !== undefined) {
    context.header('retry-after', `${refused.waitSeconds}`);
    return faultsAnswer(context, refused.faults, 429);
  }
  const isPerson = ['access.name', 'access.name-used', 'access.no-passphrase'].includes(
    refused.faults[0]?.code ?? '',
  );
  return faultsAnswer(context, refused.faults, isPerson ? 422 : 403);
}
