import { expect, test } from 'vitest';
import { markOwn } from './markOwn.ts';
import type { Knowledge } from './schema.ts';

const knowledge = {
  signs: { a: { name: 'A nail' }, b: { name: 'A cross', mine: true } },
  shops: { c: { name: 'Mill Lane' }, d: { name: 'Our lane', mine: true } },
} as unknown as Knowledge;
const marks = { sign: 'own sign', shop: 'own file' };

test('marks the user’s own by name, once, and leaves the program’s as they are', () => {
  const once = markOwn(knowledge, marks);
  expect(once.signs.a?.name).toBe('A nail');
  expect(once.signs.b?.name).toBe('A cross (own sign)');
  expect(once.shops.c?.name).toBe('Mill Lane');
  expect(once.shops.d?.name).toBe('Our lane (own file)');
  expect(markOwn(once, marks)).toEqual(once);
  expect(knowledge.signs.b?.name).toBe('A cross');
});

test('knowledge without own entries keeps its very tables, so that nothing is reckoned anew', () => {
  const plain = { signs: { a: { name: 'A nail' } }, shops: {} } as unknown as Knowledge;
  expect(markOwn(plain, marks).signs).toBe(plain.signs);
});
