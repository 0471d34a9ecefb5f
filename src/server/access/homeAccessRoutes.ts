import { type Context, Hono } from 'hono';
import { z } from 'zod';
import type { Outcome } from '../../ground/fault.ts';
import type { ReadOnly } from '../../record/readOnly/readOnly.ts';
import { faultAnswer, faultsAnswer } from '../faultAnswer.ts';
import type { Network, NetworkStanding } from '../network/network.ts';
import { certificateFile } from '../network/trustPage.ts';
import { onlyReading } from '../onlyReading.ts';
import { readBody, readJson } from '../readJson.ts';
import type { Access } from './access.ts';
import type { PairingCode } from './devices.ts';
import type { DoorStanding } from './signInRoutes.ts';

/** A paired device as the screens are told of it. */
export type ShownDevice = { id: string; name: string; paired: number; seen: number; isOut: boolean };

/** Who may come in over the network, and whether anybody can: what the page of the devices shows. Times in milliseconds since 1970. */
export type AccessAnswer = {
  hasPassphrase: boolean;
  network: NetworkStanding;
  devices: ShownDevice[];
  /** Whoever is signed in by the passphrase. */
  sessions: { id: string; browser: string; begun: number; seen: number }[];
};

const passphraseBody = z.strictObject({ passphrase: z.string().max(1000) });

/** What is done at the computer itself: the passphrase, the network, the devices and who is signed in. */
export function homeAccessRoutes(access: Access, network: Network, readOnly?: ReadOnly): Hono {
  const { sessions, devices } = access;
  const routes = new Hono();
  const answer = (context: Context, outcome: Outcome<unknown>) =>
    outcome.ok ? context.json(standing()) : faultsAnswer(context, outcome.faults);
  const standing = (): AccessAnswer => ({
    hasPassphrase: access.hasPassphrase(),
    network: network.standing(),
    devices: devices.list().map(({ id, name, paired, seen, shutOut }) => ({
      id,
      name,
      paired,
      seen: Math.max(seen, ...sessions.list().flatMap((one) => (one.device === id ? [one.seen] : []))),
      isOut: shutOut !== undefined,
    })),
    sessions: sessions
      .list()
      .filter(({ device }) => device === undefined)
      .map(({ id, browser, begun, seen }) => ({ id, browser, begun, seen })),
  });
  routes.use(async (context, next) => {
    await next();
    context.header('cache-control', 'no-store');
  });
  if (readOnly !== undefined) routes.use(onlyReading(readOnly));
  routes.get('/standing', (context) => context.json({ door: 'home' } satisfies DoorStanding));
  routes.get('/', (context) => context.json(standing()));
  routes.get('/authority.crt', (context) => {
    const authority = network.authority();
    return authority === undefined
      ? faultAnswer(context, 404, 'network.shut', 'Open the network first: the certificate is made then.')
      : certificateFile(authority, (bytes, headers) => context.body(bytes, 200, headers));
  });
  routes.post('/passphrase', async (context) => {
    const body = readBody(await readJson(context), passphraseBody);
    if (!body.ok) return faultsAnswer(context, body.faults);
    return answer(context, await access.choosePassphrase(body.value.passphrase));
  });
  routes.post('/network/open', async (context) => answer(context, await network.open()));
  routes.post('/network/close', async (context) => {
    await network.close();
    return context.json(standing());
  });
  routes.post('/code', (context) => context.json(devices.newCode() satisfies PairingCode));
  routes.post('/code/drop', (context) => {
    devices.dropCode();
    return context.json(standing());
  });
  routes.post('/devices/:id/shut-out', async (context) =>
    answer(context, await devices.shutOut(context.req.param('id'))),
  );
  routes.post('/sessions/:id/end', async (context) => {
    await sessions.end(context.req.param('id'));
    return context.json(standing());
  });
  routes.post('/sign-out-everywhere', async (context) => {
    await sessions.endAll();
    return context.json(standing());
  });
  routes.all('*', (context) =>
    faultAnswer(context, 404, 'server.no-such-route', 'There is nothing at this address.'),
  );
  return routes;
}
