import { describe, expect, it } from 'vitest';
import { act, finding, opening } from '../kits/drafts.ts';
import { testApp } from '../kits/testApp.ts';

const post = async (body: string) => {
  const tried = await testApp();
  await tried.post('/api/pieces/one/events', { events: [opening('one')] });
  const before = JSON.stringify(tried.store.piece('one'));
  const answer = await tried.post('/api/pieces/one/events', body);
  return { answer, unchanged: JSON.stringify(tried.store.piece('one')) === before, faults: tried.faults };
};

const raw = (changes: string) =>
  JSON.stringify({ events: [{ ...finding('one', 'a', 'splat'), changes: [] }] }).replace(
    '"changes":[]',
    `"changes":${changes}`,
  );

describe('acts that mean harm', () => {
  it.each([
    ['a path through the prototype', raw('[{"path":["__proto__","polluted"],"to":true}]')],
    ['a path through a constructor', raw('[{"path":["findings","constructor"],"to":{}}]')],
    [
      'a prototype deep in a value',
      raw(
        '[{"path":["findings","x"],"to":{"id":"x","sign":"x","state":"present","__proto__":{"polluted":true}}}]',
      ),
    ],
    ['a prototype beside the changes', raw('[{"path":["title"],"to":"x","__proto__":{"polluted":true}}]')],
    [
      'a value that nests without end',
      raw(`[{"path":["title"],"to":${'['.repeat(100_000)}${']'.repeat(100_000)}}]`),
    ],
    ['a path that is too long', raw('[{"path":["a","b","c","d","e","f","g"],"to":1}]')],
    ['a number that is none', raw('[{"path":["measures","h"],"to":{"id":"h","mm":1e999,"asEntered":"?"}}]')],
    [
      'a photo named by a path',
      raw(
        '[{"path":["photos","p"],"to":{"id":"p","sha256":"../../../etc/passwd","mediaType":"image/jpeg","name":"x","bytes":1,"widthPx":1,"heightPx":1}}]',
      ),
    ],
  ])('%s is refused and changes nothing', async (_what, body) => {
    const { answer, unchanged, faults } = await post(body);
    expect(answer.status).toBe(422);
    expect(unchanged).toBe(true);
    expect(faults).toEqual([]);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it.each(['../../etc/passwd', 'a/b', 'a b', '', '.', '__proto__', 'x'.repeat(81), 'ä', 'a\u0000b'])(
    'a piece called "%s" is refused',
    async (id) => {
      const { store } = await testApp();
      expect(store.append([opening(id)]).ok).toBe(false);
      expect(store.pieces()).toEqual([]);
    },
  );

  it('a device with control characters or half a letter in its name is refused', async () => {
    const { store } = await testApp();
    for (const device of ['a\u0000', 'a\nb', '\ud800', ''])
      expect(store.append([opening('one', { device })]).ok).toBe(false);
  });

  it('words of any script, and words that look like code, are kept as they are', async () => {
    const { store, get } = await testApp();
    const words = `<script>alert(1)</script> '); DROP TABLE events; -- \u202e ｆｕｌｌ 椅子 🪑 ${'x'.repeat(10_000)}`;
    store.append([
      opening('one'),
      act('one', 'piece-described', [{ path: ['title'], to: words }], { who: words.slice(0, 100) }),
    ]);
    const answer = await get('/api/pieces/one');
    expect(answer.headers.get('content-type')).toContain('application/json');
    expect(((await answer.json()) as { piece: { title: string } }).piece.title).toBe(words);
  });

  it.each(['..%2f..%2frecord.db', '%00', 'ABCDEF', `${'0'.repeat(63)}/`, '__proto__'])(
    'a photo asked for as "%s" is not there',
    async (name) => {
      const { get } = await testApp();
      expect((await get(`/api/photos/${name}/original`)).status).toBe(404);
    },
  );

  it('acts out of order are refused until the piece is open, and then taken', async () => {
    const { post, store } = await testApp();
    const late = finding('one', 'a', 'splat');
    expect((await post('/api/pieces/one/events', { events: [late] })).status).toBe(404);
    await post('/api/pieces/one/events', { events: [opening('one')] });
    expect((await post('/api/pieces/one/events', { events: [late] })).status).toBe(200);
    expect(store.history('one')).toHaveLength(2);
  });
});
