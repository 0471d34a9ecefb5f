import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { inputsHash, readStamps, withBuildLock, writeStamps } from './buildStamps.mjs';

async function folder() {
  const dir = await mkdtemp(join(tmpdir(), 'underside-'));
  onTestFinished(() => rm(dir, { recursive: true }));
  await mkdir(join(dir, 'src'));
  await writeFile(join(dir, 'src/a.ts'), 'a');
  return dir;
}

describe('the hash of what a part is made from', () => {
  it('changes with a byte, a name and a new file, and not with a test', async () => {
    const dir = await folder();
    const seen = [await inputsHash(dir, ['src', 'none'])];
    await writeFile(join(dir, 'src/a.test.ts'), 'test');
    expect(await inputsHash(dir, ['src', 'none'])).toBe(seen[0]);
    await writeFile(join(dir, 'src/a.ts'), 'b');
    seen.push(await inputsHash(dir, ['src', 'none']));
    await writeFile(join(dir, 'src/b.ts'), '');
    seen.push(await inputsHash(dir, ['src', 'none']));
    await rm(join(dir, 'src/b.ts'));
    await writeFile(join(dir, 'src/c.ts'), '');
    seen.push(await inputsHash(dir, ['src', 'none']));
    expect(new Set(seen).size).toBe(4);
  });
});

describe('the stamps', () => {
  it('come back as they were written; a broken file counts as none', async () => {
    const dir = await folder();
    expect(await readStamps(dir)).toEqual({});
    await writeStamps(dir, { web: '1' });
    expect(await readStamps(dir)).toEqual({ web: '1' });
    await writeFile(join(dir, 'stamps.json'), '{"web":');
    expect(await readStamps(dir)).toEqual({});
  });
});

describe('the lock of a build', () => {
  it('lets one build run after the other', async () => {
    const dir = await folder();
    const seen = [];
    const work = (name) => async () => {
      seen.push(`${name} begins`);
      await new Promise((resolve) => setTimeout(resolve, 20));
      seen.push(`${name} ends`);
    };
    await Promise.all([withBuildLock(dir, () => {}, work('one')), withBuildLock(dir, () => {}, work('two'))]);
    expect(seen[0]?.slice(0, 3)).toBe(seen[1]?.slice(0, 3));
    expect(seen).toHaveLength(4);
  });

  it('is taken over from a process that is gone, and given back after a fault', async () => {
    const dir = await folder();
    await mkdir(join(dir, '.cache'));
    await writeFile(join(dir, '.cache/build.lock'), '999999999');
    await expect(
      withBuildLock(
        dir,
        () => {},
        () => Promise.reject(new Error('no')),
      ),
    ).rejects.toThrow('no');
    expect(
      await withBuildLock(
        dir,
        () => {},
        async () => 'made',
      ),
    ).toBe('made');
  });
});
