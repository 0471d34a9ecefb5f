import { expect, it } from 'vitest';
import { z } from 'zod';
import { keep, namesKept, readKept, readKeptAs } from './drawer.ts';

/** A store in memory; one that is full throws at each letter, as browsers do. */
function someStore({ isFull = false } = {}): Storage {
  const kept = new Map<string, string>();
  return {
    get length() {
      return kept.size;
    },
    key: (at: number) => [...kept.keys()][at] ?? null,
    getItem: (name: string) => kept.get(name) ?? null,
    setItem(name: string, value: string) {
      if (isFull) throw new DOMException('full', 'QuotaExceededError');
      kept.set(name, value);
    },
    removeItem: (name: string) => void kept.delete(name),
    clear: () => kept.clear(),
  };
}

it('gives back what was kept, and nothing once it was let go', () => {
  const store = someStore();
  keep('underside.a.1', '"one"', store);
  keep('underside.b', 'two', store);
  expect(namesKept('underside.a.', store)).toEqual(['underside.a.1']);
  expect(readKeptAs('underside.a.1', z.string(), store)).toBe('one');
  keep('underside.a.1', undefined, store);
  expect(readKept('underside.a.1', store)).toBeNull();
});

it('takes no draft for one that has another shape or can’t be read', () => {
  const store = someStore();
  keep('half', '{"a"', store);
  keep('other', '{"a": 1}', store);
  const shape = z.object({ a: z.string() });
  expect([readKeptAs('half', shape, store), readKeptAs('other', shape, store)]).toEqual([
    undefined,
    undefined,
  ]);
  expect(readKeptAs('none', shape, store)).toBeUndefined();
});

it('goes on where the store is full or there is none', () => {
  keep('a', 'b', someStore({ isFull: true }));
  keep('a', 'b', undefined);
  expect(namesKept('', undefined)).toEqual([]);
});
