import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { evidenceMutants, evidenceTests } from '../kits/evidenceMutants.ts';

const read = (file: string) => readFileSync(fileURLToPath(new URL(`../../${file}`, import.meta.url)), 'utf8');

// The proof itself, each fault put in and the tests run, is a nightly one: test/nightly/evidenceMutants.test.ts.
describe('the hand-made faults', () => {
  it.each(evidenceMutants)('$name: still has its place in the code', ({ file, find, replace }) => {
    expect(read(file).split(find)).toHaveLength(2);
    expect(replace).not.toBe(find);
  });

  it('are looked for by tests that are there', () => {
    for (const file of evidenceTests) expect(read(file)).toContain('expect(');
  });
});
