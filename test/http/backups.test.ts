import { describe, expect, it } from 'vitest';
import { testApp } from '../kits/testApp.ts';

describe('the back-ups over HTTP', () => {
  it('are told, with the usual folder and no copy yet', async () => {
    const { get } = await testApp();
    const status = await (await get('/api/backups')).json();
    expect(status).toMatchObject({ copies: 0, last: null, running: null, warning: null, daily: true });
    expect(status.folder).toBe(status.usualFolder);
  });

  it('are begun as a job, which says in words what stood in the way', async () => {
    const { get, post } = await testApp();
    const answer = await post('/api/backups', {});
    expect(answer.status).toBe(202);
    const { job } = await answer.json();
    let state = await (await get(`/api/jobs/${job}`)).json();
    while (state.state === 'running') state = await (await get(`/api/jobs/${job}`)).json();
    expect(state).toMatchObject({
      state: 'failed',
      message: expect.stringContaining('There is no record in'),
    });
  });

  it('take a folder and whether they are daily, and nothing else', async () => {
    const { post } = await testApp();
    expect((await post('/api/backups/settings', { daily: false })).status).toBe(200);
    expect((await post('/api/backups/settings', { folder: 'here' })).status).toBe(422);
    expect((await post('/api/backups/settings', { folder: 3 })).status).toBe(422);
    expect((await post('/api/backups/settings', { other: true })).status).toBe(422);
  });
});
