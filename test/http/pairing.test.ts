import { describe, expect, it } from 'vitest';
import { opening } from '../kits/drafts.ts';
import { cookieOf, inventedToken, type TestDoors, testDevice, testDoors } from '../kits/testDoor.ts';

const codeOf = async (answer: Response) =>
  ((await answer.json()) as { faults?: { code: string }[] }).faults?.[0]?.code;
const minute = 60_000;

async function pairedDevice(doors: TestDoors, name = 'Kitchen tablet') {
  const device = await testDevice();
  const { code } = doors.access.devices.newCode();
  const answer = await doors.ask('/api/access/pair', { body: await device.pairing(code, name) });
  const { id } = (await answer.json()) as { id: string };
  const challenge = async () => {
    const asked = await doors.ask('/api/access/challenge', { body: { device: id } });
    return ((await asked.json()) as { challenge: string }).challenge;
  };
  return { ...device, id, code, challenge, cookie: cookieOf(answer) };
}

describe('a code', () => {
  it('lets one device in, which then has a key and is signed in', async () => {
    const doors = await testDoors();
    const { cookie } = await pairedDevice(doors);
    expect((await doors.ask('/api/pieces', { cookie })).status).toBe(200);
    expect(await (await doors.ask('/api/access/standing', { cookie })).json()).toMatchObject({
      signedIn: true,
      device: 'Kitchen tablet',
    });
  });

  it('is asked for at the computer itself, and typed with gaps and in small letters it is the same', async () => {
    const { home, ask } = await testDoors();
    const shown = await home.request('http://127.0.0.1:4717/api/access/code', {
      method: 'POST',
      headers: { 'x-underside': '1' },
      body: '{}',
    });
    const { code } = (await shown.json()) as { code: string };
    const device = await testDevice();
    const typed = `${code.slice(0, 4)} ${code.slice(4)}`.toLowerCase();
    const body = { ...(await device.pairing(code, 'Tablet')), code: typed };
    expect((await ask('/api/access/pair', { body })).status).toBe(200);
  });

  it('is worth nothing the second time', async () => {
    const doors = await testDoors();
    const { code } = await pairedDevice(doors);
    const answer = await doors.ask('/api/access/pair', {
      body: await (await testDevice()).pairing(code, 'Another'),
    });
    expect([answer.status, await codeOf(answer)]).toEqual([403, 'access.wrong-code']);
    expect(doors.access.devices.list()).toHaveLength(1);
  });

  it('lets in one of two that come at the same time', async () => {
    const { ask, access } = await testDoors();
    const { code } = access.devices.newCode();
    const bodies = await Promise.all(
      ['One', 'Two'].map(async (name) => (await testDevice()).pairing(code, name)),
    );
    const answers = await Promise.all(bodies.map((body) => ask('/api/access/pair', { body })));
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 403]);
  });

  it.each([
    ['after ten minutes', (doors: TestDoors) => (doors.clock.now += 10 * minute)],
    ['once another was shown', (doors: TestDoors) => doors.access.devices.newCode()],
    ['once it was taken back', (doors: TestDoors) => doors.access.devices.dropCode()],
  ])('is worth nothing %s', async (_when, happens) => {
    const doors = await testDoors();
    const { code } = doors.access.devices.newCode();
    happens(doors);
    const answer = await doors.ask('/api/access/pair', {
      body: await (await testDevice()).pairing(code, 'Tablet'),
    });
    expect([answer.status, await codeOf(answer)]).toEqual([403, 'access.wrong-code']);
  });

  it('can’t be guessed at leisure', async () => {
    const { ask, access } = await testDoors();
    access.devices.newCode();
    const device = await testDevice();
    const answers = [];
    for (let tries = 0; tries < 6; tries += 1)
      answers.push(await ask('/api/access/pair', { body: await device.pairing('WRONGWRONGWR', 'Tablet') }));
    expect(answers.map(({ status }) => status)).toEqual([403, 403, 403, 403, 403, 429]);
  });

  it('lets no device in whose key did not sign it, nor one that takes a name in use', async () => {
    const doors = await testDoors();
    await pairedDevice(doors);
    const { code } = doors.access.devices.newCode();
    const [one, other] = [await testDevice(), await testDevice()];
    const stolen = { ...(await one.pairing(code, 'Mine')), publicKey: other.publicKey };
    expect(await codeOf(await doors.ask('/api/access/pair', { body: stolen }))).toBe('access.bad-key');
    const same = await doors.ask('/api/access/pair', { body: await one.pairing(code, ' kitchen  TABLET') });
    expect([same.status, await codeOf(same)]).toEqual([422, 'access.name-used']);
    // Neither used the code up.
    expect((await doors.ask('/api/access/pair', { body: await one.pairing(code, 'Mine') })).status).toBe(200);
  });
});

describe('a device’s key', () => {
  it('signs in anew by a challenge, after a day too', async () => {
    const doors = await testDoors();
    const device = await pairedDevice(doors);
    doors.clock.now += 24 * 60 * minute;
    expect((await doors.ask('/api/pieces', { cookie: device.cookie })).status).toBe(401);
    const answer = await doors.ask('/api/access/device', {
      body: await device.answer(device.id, await device.challenge()),
    });
    expect((await doors.ask('/api/pieces', { cookie: cookieOf(answer) })).status).toBe(200);
  });

  it('gains nothing by what was overheard: an answer is good once', async () => {
    const doors = await testDoors();
    const device = await pairedDevice(doors);
    const body = await device.answer(device.id, await device.challenge());
    expect((await doors.ask('/api/access/device', { body })).status).toBe(200);
    const again = await doors.ask('/api/access/device', { body });
    expect([again.status, await codeOf(again)]).toEqual([403, 'access.challenge-over']);
  });

  it('does not do late, for another device, with another key, or over a challenge of its own', async () => {
    const doors = await testDoors();
    const device = await pairedDevice(doors);
    const other = await pairedDevice(doors, 'Phone');
    const refused = async (body: object) => codeOf(await doors.ask('/api/access/device', { body }));
    const late = await device.answer(device.id, await device.challenge());
    doors.clock.now += 2 * minute;
    expect(await refused(late)).toBe('access.challenge-over');
    expect(await refused(await device.answer(device.id, await other.challenge()))).toBe(
      'access.challenge-over',
    );
    expect(await refused(await other.answer(device.id, await device.challenge()))).toBe('access.bad-key');
    expect(await refused(await device.answer(device.id, inventedToken()))).toBe('access.challenge-over');
    const challenge = await device.challenge();
    const swapped = { ...(await device.answer(device.id, challenge)), device: other.id };
    expect(await refused(swapped)).toBe('access.challenge-over');
  });

  it('names every act that comes in with it, whatever the act says', async () => {
    const doors = await testDoors();
    const { cookie } = await pairedDevice(doors);
    const body = { events: [{ ...opening('one'), device: 'Office' }] };
    for (const type of ['application/json', 'text/plain']) {
      const headers = { 'content-type': type };
      const answer = await doors.ask('/api/pieces/one/events', { body, cookie, headers });
      expect(answer.status).toBe(200);
      expect(doors.store.history('one')[0]?.device).toBe('Kitchen tablet');
    }
  });
});

describe('a device that is shut out', () => {
  it('is out at once, can’t come in again by its key, and its name is not given to another', async () => {
    const doors = await testDoors();
    const device = await pairedDevice(doors);
    const answered = await device.answer(device.id, await device.challenge());
    const out = await doors.home.request(`http://127.0.0.1:4717/api/access/devices/${device.id}/shut-out`, {
      method: 'POST',
      headers: { 'x-underside': '1' },
    });
    expect(await out.json()).toMatchObject({ devices: [{ name: 'Kitchen tablet', isOut: true }] });
    expect((await doors.ask('/api/pieces', { cookie: device.cookie })).status).toBe(401);
    expect(await codeOf(await doors.ask('/api/access/device', { body: answered }))).toBe('access.shut-out');
    const again = await doors.ask('/api/access/pair', {
      body: await device.pairing(doors.access.devices.newCode().code, 'Kitchen tablet'),
    });
    expect(await codeOf(again)).toBe('access.name-used');
  });
});
