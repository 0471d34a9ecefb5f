import { describe, expect, it } from 'vitest';
import { memoryLog } from '../../src/record/memoryLog.ts';
import { asked } from '../../src/record/readOnly/readOnly.ts';
import { refuseWriting } from '../../src/record/readOnly/refuseWriting.ts';
import { createStore } from '../../src/record/store.ts';
import { finding, opening, step } from '../kits/drafts.ts';
import { testApp } from '../kits/testApp.ts';

const mine = { 'x-underside': '1', 'content-type': 'application/json' };

describe('a server on a record that is looked at only', () => {
  it('refuses every address that takes something in, now and whichever comes to be', async () => {
    const { app, house } = await testApp({ parts: { readOnly: asked() } });
    const addresses = house.routes
      .filter(({ method, path }) => !['GET', 'ALL'].includes(method) && path.startsWith('/api/'))
      .map(({ method, path }) => `${method} ${path}`);
    const open: string[] = [];
    for (const address of new Set(addresses)) {
      const [method = '', path = ''] = address.split(' ');
      const url = `http://127.0.0.1:4717${path.replaceAll(/:\w+/g, 'one')}`;
      const answer = await app.request(url, { method, headers: mine, body: '{}' });
      if (answer.status !== 403 || !(await answer.text()).includes('record.read-only')) open.push(address);
    }
    expect(addresses.length).toBeGreaterThan(12);
    expect(open.sort()).toEqual([
      'POST /api/calc/:id',
      'POST /api/pieces/:id/file',
      'POST /api/pieces/:id/opinion',
    ]);
  });

  it('says that it is so, and takes nothing where an address forgot to ask', async () => {
    const writable = await testApp();
    expect(await (await writable.get('/api/record')).json()).toMatchObject({ readOnly: null });
    const used = await testApp({ parts: { readOnly: asked() } });
    expect(await (await used.get('/api/record')).json()).toMatchObject({ readOnly: { code: 'asked' } });

    const store = createStore(memoryLog());
    store.append([opening('one')]);
    const none = undefined as never;
    const shut = refuseWriting({ store, photos: none, own: none }, asked()).store;
    const refused = { ok: false, faults: [{ code: 'record.read-only' }] };
    expect(shut.append([finding('one', 'a', 'splat')])).toMatchObject(refused);
    expect(shut.undo('one', step())).toMatchObject(refused);
    expect(shut.redo('one', step())).toMatchObject(refused);
    expect(shut.issue({}, 1)).toMatchObject(refused);
    expect(shut.adopt(none, false)).toMatchObject(refused);
    expect(shut.piece('one')).toMatchObject({ readOnly: true, canUndo: false, canRedo: false });
    expect(store.piece('one')).toMatchObject({ readOnly: false, count: 1 });
  });
});
