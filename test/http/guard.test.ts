import { describe, expect, it } from 'vitest';
import { act, opening } from '../kits/drafts.ts';
import { testApp } from '../kits/testApp.ts';

describe('who may speak to the server', () => {
  it.each([
    'evil.example',
    'evil.example:4717',
    '127.0.0.1.evil.example',
    'localhost.evil.example',
    '10.0.0.5:4717',
    '',
  ])('turns away the host "%s", since a name can be pointed at this machine', async (host) => {
    const { get } = await testApp();
    const answer = await get('/api/pieces', { host });
    expect(answer.status).toBe(403);
    expect(await answer.json()).toMatchObject({ faults: [{ code: 'server.strange-host' }] });
  });

  it.each(['127.0.0.1:4717', 'localhost:4717', '[::1]:4717', 'localhost'])('answers to %s', async (host) => {
    const { get } = await testApp();
    expect((await get('/api/pieces', { host })).status).toBe(200);
  });

  it.each([
    ['another origin', { origin: 'https://evil.example' }],
    ['another port of this machine', { origin: 'http://127.0.0.1:9999' }],
    ['an origin that is none', { origin: 'null' }],
    ['a request the browser calls cross-site', { 'sec-fetch-site': 'cross-site' }],
    ['a request without our header', { 'x-underside': '' }],
  ])('changes nothing for %s', async (_what, headers) => {
    const { post, store } = await testApp();
    const answer = await post('/api/pieces/one/events', { events: [opening('one')] }, {
      host: '127.0.0.1:4717',
      ...headers,
    } as Record<string, string>);
    expect(answer.status).toBe(403);
    expect(store.pieces()).toEqual([]);
  });

  const foreign: [string, Record<string, string>][] = [
    [
      'a request the browser calls cross-site',
      { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'no-cors' },
    ],
    ['a link on another site', { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate' }],
    ['another port of this machine', { 'sec-fetch-site': 'same-site' }],
    ['another origin, in a browser that says no more', { origin: 'https://evil.example' }],
    ['a page of another origin, in a browser that says no more', { referer: 'https://evil.example/page' }],
    ['a page whose address begins like ours', { referer: 'http://127.0.0.1:47170/page' }],
  ];
  const asked = ['pieces', 'field-guide.pdf?form=side-chair', 'pieces/one/opinion.pdf', 'scale-card.pdf'];

  it.each(foreign)('tells nothing and starts nothing for %s', async (_what, headers) => {
    const begun: string[] = [];
    const { get, store } = await testApp({
      parts: {
        setOpinion: async ({ id }) => {
          begun.push(id);
          return new Uint8Array();
        },
      },
    });
    store.append([opening('one')]);
    for (const path of [...asked.map((each) => `/api/${each}`), '/knowledge.json']) {
      const answer = await get(path, { host: '127.0.0.1:4717', ...headers });
      expect([path, answer.status]).toEqual([path, 403]);
      expect(await answer.json()).toMatchObject({ faults: [{ code: 'server.other-page' }] });
    }
    expect(begun).toEqual([]);
  });

  it.each([
    ['its own page', { 'sec-fetch-site': 'same-origin', 'sec-fetch-mode': 'cors' }],
    [
      'a download followed on its own page',
      { 'sec-fetch-site': 'same-origin', 'sec-fetch-mode': 'navigate' },
    ],
    ['an address typed or kept', { 'sec-fetch-site': 'none', 'sec-fetch-mode': 'navigate' }],
    ['its own page in a browser that says no more', { referer: 'http://127.0.0.1:4717/piece/one/opinion' }],
    ['a program that is no browser', {}],
  ])('answers what %s asks', async (_what, headers) => {
    const { get, store } = await testApp();
    store.append([opening('one')]);
    for (const path of ['/api/pieces', '/api/pieces/one/opinion.pdf', '/knowledge.json'])
      expect((await get(path, { host: '127.0.0.1:4717', ...(headers as object) })).status).toBe(200);
  });

  it('shows its screens to whoever follows a link to them', async () => {
    const { get } = await testApp();
    const answer = await get('/piece/one/opinion', { 'sec-fetch-site': 'cross-site' });
    expect(answer.status).not.toBe(403);
  });

  it('takes a change from its own page', async () => {
    const { post } = await testApp();
    const own = { host: '127.0.0.1:4717', origin: 'http://127.0.0.1:4717', 'sec-fetch-site': 'same-origin' };
    expect((await post('/api/pieces/one/events', { events: [opening('one')] }, own)).status).toBe(200);
  });
});

describe('what every answer carries', () => {
  it.each(['/', '/api/pieces', '/api/nothing', '/knowledge.json'])('a policy on %s', async (path) => {
    const { get } = await testApp();
    const { headers } = await get(path);
    const policy = headers.get('content-security-policy') ?? '';
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe');
    expect(policy).not.toMatch(/https?:|\*/);
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('referrer-policy')).toBe('no-referrer');
    expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
  });

  it('no word of what went wrong inside', async () => {
    const broken = async () => {
      throw new Error('a secret place on the disk');
    };
    const { post, faults } = await testApp({ parts: { calculate: broken } });
    const answer = await post('/api/calc/inference.posterior', {});
    expect(answer.status).toBe(500);
    expect(await answer.text()).not.toContain('secret');
    expect(faults).toHaveLength(1);
  });
});

describe('bodies', () => {
  it('refuses JSON beyond 2 MB, whether it says its length or not', async () => {
    const { post, app, store } = await testApp();
    const large = JSON.stringify({
      events: [act('one', 'piece-described', [{ path: ['title'], to: 'x'.repeat(2_100_000) }])],
    });
    expect((await post('/api/pieces/one/events', large)).status).toBe(422);
    const stream = new Blob([large]).stream();
    const answer = await app.request('http://127.0.0.1/api/pieces/one/events', {
      method: 'POST',
      headers: { 'x-underside': '1' },
      body: stream,
      duplex: 'half',
    } as RequestInit);
    expect(await answer.json()).toMatchObject({ faults: [{ code: 'server.too-large' }] });
    expect(store.pieces()).toEqual([]);
  });

  it.each([
    '',
    '{',
    'null',
    '[]',
    '"x"',
    '{"events":{}}',
    '{"events":[]}',
    '{"events":[null]}',
    '{"events":[{}],"more":1}',
  ])('answers faults for %s', async (body) => {
    const { post } = await testApp();
    const answer = await post('/api/pieces/one/events', body);
    expect(answer.status).toBe(422);
    expect(((await answer.json()) as { faults: { message: string }[] }).faults[0]?.message).toMatch(/\.$/);
  });
});
