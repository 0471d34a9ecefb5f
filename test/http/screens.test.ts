import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../kits/temporaryFolder.ts';
import { testApp } from '../kits/testApp.ts';

async function withScreens() {
  const dir = await temporaryFolder();
  const webDir = join(dir, 'web');
  await mkdir(join(webDir, 'assets'), { recursive: true });
  await writeFile(join(webDir, 'index.html'), '<title>Underside</title>');
  await writeFile(join(webDir, 'assets', 'main-1a2b.js'), 'export {};');
  await writeFile(join(dir, 'secret.txt'), 'secret');
  return testApp({ webDir });
}

describe('the screens', () => {
  it.each(['/', '/piece/one/examination', '/reference'])('answers the page for %s', async (path) => {
    const { get } = await withScreens();
    const answer = await get(path);
    expect(answer.headers.get('content-type')).toContain('text/html');
    expect(answer.headers.get('cache-control')).toBe('no-cache');
    expect(await answer.text()).toContain('Underside');
  });

  it('lets a file that is named by its hash be kept for good', async () => {
    const { get } = await withScreens();
    const answer = await get('/assets/main-1a2b.js');
    expect(answer.headers.get('content-type')).toContain('text/javascript');
    expect(answer.headers.get('cache-control')).toContain('immutable');
  });

  it.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/assets/%5c..%5c..%5csecret.txt',
    '/secret.txt',
    '/assets/none.js',
  ])('gives nothing outside its folder for %s', async (path) => {
    const { get } = await withScreens();
    const answer = await get(path);
    expect(await answer.text()).not.toContain('secret');
  });
});
