import { describe, expect, it } from 'vitest';
import type { Json } from '../../src/piece/event.ts';
import { act, finding, opening, step } from '../kits/drafts.ts';
import { testApp } from '../kits/testApp.ts';

const example: Json = {
  id: 'example-side-chair',
  title: 'An invented chair',
  form: 'side-chair',
  example: true,
  opinion: { status: 'signed', signedBy: 'P. H.', signedOn: '2026-10-20' },
};
const bases = new Map([['example-side-chair', example]]);

describe('pieces over HTTP', () => {
  it('opens, records, reads, undoes, redoes and tells the history', async () => {
    const { get, post } = await testApp();
    const opened = await post('/api/pieces/one/events', { events: [opening('one')] });
    expect(await opened.json()).toMatchObject({
      piece: { id: 'one' },
      seq: 1,
      canUndo: false,
      canRedo: false,
      readOnly: false,
    });
    const mark = finding('one', 'saw', 'splat');
    const found = await post('/api/pieces/one/events', { events: [mark] });
    expect(await found.json()).toMatchObject({ accepted: [mark.id], seq: 2, canUndo: true });
    expect(await (await get('/api/pieces/one')).json()).toMatchObject({
      piece: { findings: { 'saw@splat': { state: 'present' } } },
      seq: 2,
    });
    expect(await (await post('/api/pieces/one/undo', step())).json()).toMatchObject({
      piece: { findings: {} },
      canUndo: false,
      canRedo: true,
      seq: 3,
    });
    expect(await (await post('/api/pieces/one/redo', step())).json()).toMatchObject({
      canUndo: true,
      canRedo: false,
      seq: 4,
    });
    const { events } = (await (await get('/api/pieces/one/history')).json()) as {
      events: { kind: string }[];
    };
    expect(events.map((event) => event.kind)).toEqual(['piece-opened', 'finding-recorded', 'undo', 'redo']);
  });

  it('says which record it is, how many acts it holds, and where it stands', async () => {
    const { get, post, store } = await testApp();
    const ask = async () => (await get('/api/record')).json();
    const before = (await ask()) as { head: string };
    expect(before).toMatchObject({
      id: store.recordId,
      count: 0,
      head: expect.stringMatching(/^[0-9a-f]{64}$/),
    });
    await post('/api/pieces/one/events', { events: [opening('one')] });
    const after = (await ask()) as { head: string };
    expect(after).toMatchObject({ id: store.recordId, count: 1, head: store.head().hash });
    expect(after.head).not.toBe(before.head);
  });

  it('does nothing for a page that was opened on another record, and says so', async () => {
    const { app, get, post, store } = await testApp();
    const other = { 'x-underside-record': 'another' };
    const refused = { faults: [{ code: 'record.other-record' }] };
    const entered = await post('/api/pieces/one/events', { events: [opening('one')] }, other);
    expect([entered.status, await entered.json()]).toMatchObject([409, refused]);
    expect(store.pieces()).toEqual([]);
    const own = { 'x-underside-record': store.recordId };
    expect((await post('/api/pieces/one/events', { events: [opening('one')] }, own)).status).toBe(200);
    expect((await get('/api/pieces/one', other)).status).toBe(409);
    expect((await get('/api/pieces/one', own)).status).toBe(200);
    expect((await app.request('http://127.0.0.1:4717/api/pieces/one')).status).toBe(200);
  });

  it('lists pieces in short, the one worked on last first', async () => {
    const { get, post } = await testApp({ bases });
    await post('/api/pieces/old/events', { events: [opening('old', { at: '2026-11-20T09:00:00Z' })] });
    await post('/api/pieces/new/events', {
      events: [
        opening('new'),
        finding('new', 'saw', 'splat'),
        act('new', 'engagement-changed', [{ path: ['engagement', 'client'], to: 'Mrs. Oldacre (invented)' }]),
      ],
    });
    const { pieces } = (await (await get('/api/pieces')).json()) as { pieces: object[] };
    expect(pieces).toMatchObject([
      {
        id: 'new',
        findings: 1,
        photos: 0,
        client: 'Mrs. Oldacre (invented)',
        status: 'draft',
        openedOn: '2026-11-25',
      },
      { id: 'old', findings: 0, openedOn: '2026-11-20' },
      { id: 'example-side-chair', example: true, status: 'signed' },
    ]);
  });

  it('answers 404 with a fault for a piece that is not there', async () => {
    const { get, post } = await testApp();
    for (const answer of [
      await get('/api/pieces/none'),
      await get('/api/pieces/none/history'),
      await post('/api/pieces/none/undo', step()),
    ]) {
      expect(answer.status).toBe(404);
      expect(await answer.json()).toMatchObject({ faults: [{ code: 'record.no-piece' }] });
    }
    const acted = await post('/api/pieces/none/events', { events: [finding('none', 'saw', 'splat')] });
    expect(acted.status).toBe(404);
  });

  it('refuses an act on another piece than the address says', async () => {
    const { post, store } = await testApp();
    const answer = await post('/api/pieces/one/events', { events: [opening('two')] });
    expect(await answer.json()).toMatchObject({ faults: [{ code: 'record.other-piece' }] });
    expect(store.pieces()).toEqual([]);
  });

  it('keeps an example as it is, and makes a copy of it one’s own, unsigned', async () => {
    const { get, post } = await testApp({ bases });
    const tried = await post('/api/pieces/example-side-chair/events', {
      events: [finding('example-side-chair', 'saw', 'splat')],
    });
    expect(tried.status).toBe(403);
    const request = { who: 'me', device: 'tablet-1', at: '2026-11-25T10:00:00+01:00', id: 'mine' };
    expect(await (await post('/api/pieces/example-side-chair/copy', request)).json()).toEqual({ id: 'mine' });
    expect(await (await post('/api/pieces/example-side-chair/copy', request)).json()).toEqual({ id: 'mine' });
    const copy = (await (await get('/api/pieces/mine')).json()) as { piece: { opinion: object } };
    expect(copy).toMatchObject({
      readOnly: false,
      seq: 1,
      piece: {
        id: 'mine',
        example: false,
        openedOn: '2026-11-25',
        opinion: { status: 'draft', signedBy: '' },
      },
    });
    expect(copy.piece.opinion).not.toHaveProperty('signedOn');
  });
});

describe('calculations, opinion and the rest over HTTP', () => {
  const network = {
    variables: [{ id: 'rain', states: ['yes', 'no'] }],
    tables: [{ variable: 'rain', given: [], rows: [[0.25, 0.75]] }],
    ask: ['rain'],
  };

  it('runs a calculation', async () => {
    const { post } = await testApp();
    const answer = await post('/api/calc/inference.posterior', network);
    expect(answer.status).toBe(200);
    expect(await answer.json()).toMatchObject({ posteriors: { rain: { yes: 0.25, no: 0.75 } } });
  });

  it('answers faults for an input that does not fit and for a calculation that is not there', async () => {
    const { post } = await testApp();
    expect((await post('/api/calc/inference.posterior', { variables: 1 })).status).toBe(422);
    expect((await post('/api/calc/none', {})).status).toBe(404);
  });

  it('sets an opinion as a job: begun, asked after, fetched', async () => {
    let finish = (_pdf: Uint8Array) => {};
    const setOpinion = (
      _piece: unknown,
      onStep: (step: { step: string; done: number; total: number }) => void,
    ) => {
      onStep({ step: 'Setting the plates', done: 3, total: 10 });
      return new Promise<Uint8Array>((resolve) => {
        finish = resolve;
      });
    };
    const { get, post } = await testApp({ parts: { setOpinion } });
    await post('/api/pieces/one/events', { events: [opening('one')] });
    const begun = await post('/api/pieces/one/opinion', {});
    expect(begun.status).toBe(202);
    const { job } = (await begun.json()) as { job: string };
    expect(await (await get(`/api/jobs/${job}`)).json()).toEqual({
      state: 'running',
      step: 'Setting the plates',
      done: 3,
      total: 10,
    });
    expect((await get(`/api/jobs/${job}/file`)).status).toBe(404);
    finish(new TextEncoder().encode('%PDF-1.7'));
    await new Promise((resolve) => setImmediate(resolve));
    expect(await (await get(`/api/jobs/${job}`)).json()).toMatchObject({ state: 'done' });
    const file = await get(`/api/jobs/${job}/file`);
    expect(file.headers.get('content-type')).toBe('application/pdf');
    expect(await file.text()).toBe('%PDF-1.7');
  });

  it('says why an opinion could not be set', async () => {
    const setOpinion = async () => {
      throw new Error('the plate 3 has no alternative text.');
    };
    const { get, post } = await testApp({ parts: { setOpinion } });
    await post('/api/pieces/one/events', { events: [opening('one')] });
    const { job } = (await (await post('/api/pieces/one/opinion', {})).json()) as { job: string };
    await new Promise((resolve) => setImmediate(resolve));
    expect(await (await get(`/api/jobs/${job}`)).json()).toMatchObject({
      state: 'failed',
      message: 'the plate 3 has no alternative text.',
    });
    expect((await get('/api/pieces/one/opinion.pdf')).status).toBe(422);
  });

  it('answers the knowledge, and 404 as a fault for an unknown address of the interface', async () => {
    const { get } = await testApp();
    expect(await (await get('/knowledge.json')).json()).toMatchObject({
      forms: { stool: { name: 'Stool' } },
    });
    const none = await get('/api/none');
    expect(none.status).toBe(404);
    expect(await none.json()).toMatchObject({ faults: [{ code: 'server.no-such-route' }] });
  });
});
