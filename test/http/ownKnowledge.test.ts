import { expect, it } from 'vitest';
import { testApp } from '../kits/testApp.ts';

const chalk = {
  name: 'A cross in chalk',
  look: 'A cross in old chalk inside the leg.',
  on: ['front-leg'],
  hangsOn: 'making',
  minutes: 1,
  shows: {
    period: '10, 4–20',
    'bench-copy': '2, 0.5–5',
    'machine-copy': '1, 0.2–3',
    'to-deceive': '5, 2–10',
  },
  basis: { by: 'judgement', why: 'Seen on four chairs of one house.' },
};

it('takes a sign of one’s own in, gives it with the knowledge, and takes it back', async () => {
  const { app, get, post } = await testApp();
  const put = (id: string, body: unknown) =>
    app.request(`http://127.0.0.1:4717/api/own-knowledge/sign/${id}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', 'x-underside': '1' },
      body: JSON.stringify(body),
    });
  expect((await put('own-chalk', chalk)).status).toBe(200);
  const known = (await (await get('/knowledge.json')).json()) as { signs: Record<string, unknown> };
  expect(known.signs['own-chalk']).toMatchObject({ mine: true });
  expect(await (await get('/api/own-knowledge')).json()).toMatchObject({ canUndo: true });

  const wrong = await put('own-other', { ...chalk, minutes: -1 });
  expect(wrong.status).toBe(422);
  expect(((await wrong.json()) as { faults: { message: string }[] }).faults[0]?.message).toMatch(/minutes/);

  expect((await post('/api/own-knowledge/undo', {})).status).toBe(200);
  const after = (await (await get('/knowledge.json')).json()) as { signs: Record<string, unknown> };
  expect(after.signs['own-chalk']).toBeUndefined();
});
