import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type TestServer } from '../browser/support/startServer.ts';
import { gradient, sha256 } from '../kits/pictures.ts';

/** The program as it is built and started: its threads, its knowledge, its examples. */
let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.stop());

const mine = { 'x-underside': '1', 'content-type': 'application/json' };
const get = (path: string) => fetch(server.address + path);
const post = (path: string, body: unknown) =>
  fetch(server.address + path, { method: 'POST', headers: mine, body: JSON.stringify(body) });

describe('the built program', () => {
  it('gives the page and the knowledge', async () => {
    expect(await (await get('')).text()).toContain('<div id="app">');
    const knowledge = (await (await get('knowledge.json')).json()) as { signs: object; forms: object };
    expect(Object.keys(knowledge.forms)).toEqual(expect.arrayContaining(['side-chair', 'armchair']));
    expect(Object.keys(knowledge.signs).length).toBeGreaterThanOrEqual(70);
  });

  it('weighs a case in its thread', async () => {
    const answer = await post('api/calc/evidence.weigh', {
      form: 'side-chair',
      mode: 'in-hand',
      findings: [],
      draws: 10,
    });
    expect(answer.status).toBe(200);
    const { readings } = (await answer.json()) as { readings: { probability: number }[] };
    expect(readings.reduce((sum, reading) => sum + reading.probability, 0)).toBeCloseTo(1, 6);
  });

  it.each(['example-side-chair', 'example-armchair'])(
    'sets the opinion on %s as a PDF, with progress',
    async (id) => {
      const begun = await post(`api/pieces/${id}/opinion`, {});
      const { job } = (await begun.json()) as { job: string };
      let state = { state: 'running', message: '', step: '' };
      const steps = new Set<string>();
      while (state.state === 'running') {
        state = (await (await get(`api/jobs/${job}`)).json()) as typeof state;
        steps.add(state.step);
        await new Promise((resolve) => setTimeout(resolve, 20));
      }
      expect(state).toMatchObject({ state: 'done' });
      expect(steps.size).toBeGreaterThan(1);
      const file = await get(`api/jobs/${job}/file`);
      expect(new TextDecoder().decode((await file.arrayBuffer()).slice(0, 5))).toBe('%PDF-');
    },
  );

  it('answers the PDF at one address too', async () => {
    const answer = await get('api/pieces/example-armchair/opinion.pdf');
    expect(answer.headers.get('content-type')).toBe('application/pdf');
    expect((await answer.arrayBuffer()).byteLength).toBeGreaterThan(20_000);
  });

  it('decodes HEIC in its thread', async () => {
    const bytes = await readFile(new URL('../pictures/gradient.heic', import.meta.url));
    const answer = await fetch(`${server.address}api/photos/${sha256(bytes)}`, {
      method: 'PUT',
      headers: mine,
      body: new Uint8Array(bytes),
    });
    expect(await answer.json()).toMatchObject({
      mediaType: 'image/heic',
      widthPx: 320,
      takenAt: '2026-04-02T10:15:00',
    });
  });

  it('shows every plate of the examples, and keeps the photos of a copy as the user’s own', async () => {
    for (const id of ['example-side-chair', 'example-armchair']) {
      const { piece } = (await (await get(`api/pieces/${id}`)).json()) as {
        piece: { photos: Record<string, { sha256: string }> };
      };
      for (const { sha256 } of Object.values(piece.photos))
        expect((await get(`api/photos/${sha256}/thumb`)).status).toBe(200);
      expect(
        (
          await post(`api/pieces/${id}/copy`, {
            id: `${id}-mine`.slice(8),
            who: '',
            device: 'test',
            at: '2026-11-25T10:00:00Z',
          })
        ).status,
      ).toBe(200);
    }
  });

  it('goes on answering while photos come in', async () => {
    const photos = await Promise.all(
      [1, 2, 3, 4].map((n) =>
        gradient(2000 + n, 1500)
          .jpeg()
          .toBuffer(),
      ),
    );
    const puts = photos.map((bytes) =>
      fetch(`${server.address}api/photos/${sha256(bytes)}`, {
        method: 'PUT',
        headers: mine,
        body: new Uint8Array(bytes),
      }),
    );
    expect((await get('api/pieces')).status).toBe(200);
    expect((await Promise.all(puts)).map((answer) => answer.status)).toEqual([200, 200, 200, 200]);
  });
});
