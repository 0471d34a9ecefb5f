import { expect, it } from 'vitest';
import { testApp } from '../kits/testApp.ts';

it.each([
  ['/api/scale-card.pdf', 595.276, 841.89],
  ['/api/scale-card.pdf?paper=a4', 595.276, 841.89],
  ['/api/scale-card.pdf?paper=letter', 612, 792],
])('%s is a page of that paper', async (path, width, height) => {
  const { get } = await testApp();
  const answer = await get(path);
  expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/pdf']);
  const bytes = Buffer.from(await answer.arrayBuffer());
  expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
  const size = /MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)/.exec(bytes.toString('latin1'));
  expect(Number(size?.[1])).toBeCloseTo(width, 1);
  expect(Number(size?.[2])).toBeCloseTo(height, 1);
});

it('names the papers where it is asked for another', async () => {
  const { get } = await testApp();
  const answer = await get('/api/scale-card.pdf?paper=a3');
  expect(answer.status).toBe(400);
  expect(await answer.json()).toMatchObject({
    faults: [{ message: expect.stringMatching(/a4 and letter/) }],
  });
});

it('lets only the worker of the card’s finder write functions', async () => {
  const { get } = await testApp();
  const policy = async (path: string) => (await get(path)).headers.get('content-security-policy');
  expect(await policy('/assets/visionWorker-a1_B2.js')).toMatch(
    /^default-src 'none'; script-src 'self' 'unsafe-eval';/,
  );
  for (const path of [
    '/assets/visionWorker-a1/x.js',
    '/assets/index-a1.js',
    '/assets/visionWorker-a1.js.map',
    '/x/assets/visionWorker-a1.js',
  ])
    expect(await policy(path)).not.toContain('unsafe');
});
