import { randomUUID } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import type { Comparison, IssuedAnswer } from '../../src/server/issuedRoutes.ts';
import { act, finding, opening } from '../kits/drafts.ts';
import { concluded, makeRevisionHere } from '../kits/signedRecord.ts';
import { type TestApp, testApp } from '../kits/testApp.ts';

/** A piece with its conclusion, on a server that makes revisions in this process. */
async function drafted(): Promise<TestApp> {
  const used = await testApp({ parts: { makeRevision: makeRevisionHere } });
  used.store.append([opening('one'), concluded('one')]);
  return used;
}

const signing = ({ store }: TestApp, more: object = {}) => ({
  id: randomUUID(),
  name: 'Perrin Halloway (invented)',
  day: '2026-11-25',
  who: '',
  device: 'tablet-1',
  at: '2026-11-25T11:00:00Z',
  seq: store.piece('one')?.seq,
  ...more,
});

async function ended({ get }: TestApp, answer: Response): Promise<{ state: string; message?: string }> {
  const { job } = (await answer.json()) as { job: string };
  for (;;) {
    const state = (await (await get(`/api/jobs/${job}`)).json()) as { state: string; message?: string };
    if (state.state !== 'running') return state;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

const issued = async ({ get }: TestApp) =>
  (await (await get('/api/pieces/one/issued')).json()) as IssuedAnswer;

describe('signing over HTTP', () => {
  it('signs once where it is asked twice, at once and again', async () => {
    const used = await drafted();
    const request = signing(used);
    const [first, second] = await Promise.all([
      used.post('/api/pieces/one/issue', request),
      used.post('/api/pieces/one/issue', request),
    ]);
    const other = await used.post('/api/pieces/one/issue', signing(used));
    expect([first.status, second.status, other.status]).toEqual([202, 202, 409]);
    expect(await ended(used, first)).toMatchObject({ state: 'done' });
    expect(await ended(used, second)).toMatchObject({ state: 'done' });
    expect(await ended(used, await used.post('/api/pieces/one/issue', request))).toMatchObject({
      state: 'done',
    });
    expect((await used.post('/api/pieces/one/issue', signing(used))).status).toBe(409);
    expect((await issued(used)).revisions.map(({ revision }) => revision)).toEqual([1]);
    expect(used.store.history('one').filter(({ kind }) => kind === 'opinion-issued')).toHaveLength(1);
  });

  it('refuses what lacks a conclusion, a name or a day, and a piece that has moved on', async () => {
    const used = await testApp({ parts: { makeRevision: makeRevisionHere } });
    used.store.append([opening('one')]);
    const bare = await used.post('/api/pieces/one/issue', signing(used));
    expect(bare.status).toBe(422);
    expect(await bare.text()).toContain('The conclusion');
    used.store.append([concluded('one')]);
    expect((await used.post('/api/pieces/one/issue', signing(used, { name: ' ' }))).status).toBe(422);
    expect((await used.post('/api/pieces/one/issue', signing(used, { day: 'today' }))).status).toBe(422);
    expect((await used.post('/api/pieces/one/issue', signing(used, { seq: 1 }))).status).toBe(409);
    expect((await issued(used)).revisions).toEqual([]);
  });

  it('hands out the same bytes whatever is changed later, and tells what was', async () => {
    const used = await drafted();
    await ended(used, await used.post('/api/pieces/one/issue', signing(used)));
    const pdf = async () => {
      const answer = await used.get('/api/pieces/one/issued/1/opinion.pdf');
      expect(answer.headers.get('content-disposition')).toContain('A chair, 2026-11-25, revision 1.pdf');
      return Buffer.from(await answer.arrayBuffer());
    };
    const first = await pdf();
    expect((await issued(used)).since).toMatchObject({ revision: 1, acts: 0, piece: { same: true } });
    used.store.append([
      finding('one', 'a', 'splat'),
      act('one', 'engagement-changed', [{ path: ['engagement', 'client'], to: 'Mrs. Orme (invented)' }]),
    ]);
    expect((await pdf()).equals(first)).toBe(true);
    const { since } = await issued(used);
    expect(since).toMatchObject({
      acts: 2,
      readingsMoved: false,
      piece: { same: false, fields: [{ path: ['engagement', 'client'], now: 'Mrs. Orme (invented)' }] },
    });
    expect(since?.piece.findings.added.map(({ sign }) => sign)).toEqual(['a']);
    const compared = await used.get('/api/pieces/one/issued/1/comparison');
    expect(compared.status).toBe(200);
    expect((await used.get('/api/pieces/one/issued/2/opinion.pdf')).status).toBe(404);
  });

  it('compares the piece as it is with the revision that is named, an earlier one too', async () => {
    const used = await drafted();
    await ended(used, await used.post('/api/pieces/one/issue', signing(used)));
    const client = (to: string) => act('one', 'engagement-changed', [{ path: ['engagement', 'client'], to }]);
    used.store.append([
      act('one', 'revision-begun', [
        { path: ['opinion', 'status'], to: 'draft' },
        { path: ['opinion', 'isNew'], to: 'The splat was looked at.' },
        { path: ['opinion', 'why'], to: 'A second visit.' },
      ]),
      finding('one', 'a', 'splat'),
      client('Mrs. Orme (invented)'),
    ]);
    await ended(used, await used.post('/api/pieces/one/issue', signing(used, { id: randomUUID() })));
    used.store.append([client('Mr. Orme (invented)')]);
    const since = async (revision: number) => {
      const answer = await used.get(`/api/pieces/one/issued/${revision}/comparison`);
      const { acts, piece } = (await answer.json()) as Comparison;
      const field = piece.fields.find(({ path }) => path.join('.') === 'engagement.client');
      return { acts, added: piece.findings.added.map(({ sign }) => sign), was: field?.was, now: field?.now };
    };
    const now = 'Mr. Orme (invented)';
    expect(await since(2)).toEqual({ acts: 1, added: [], was: 'Mrs. Orme (invented)', now });
    expect(await since(1)).toMatchObject({ acts: 3, added: ['a'], now });
    expect((await since(1)).was).not.toBe('Mrs. Orme (invented)');
    expect((await used.get('/api/pieces/one/issued/3/comparison')).status).toBe(404);
  });
});
