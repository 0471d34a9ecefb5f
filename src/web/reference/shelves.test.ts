import { beforeAll, describe, expect, test } from 'vitest';
import { houseKnowledge } from '../../../test/kits/houseKnowledge.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import { askedFor, groupsWithWords, shelfGroups, shelfIds } from './shelves.ts';

describe('the shelves', () => {
  const books: { knowledge?: Knowledge } = {};
  beforeAll(async () => {
    books.knowledge = await houseKnowledge();
  });

  test('hold every entry of the knowledge once', () => {
    const { knowledge } = books;
    if (knowledge === undefined)
      throw new Error('the knowledge does not compile: npm run knowledge says why');
    const counts = shelfIds.map((shelf) => {
      const ids = shelfGroups(shelf, knowledge).flatMap((group) => group.entries.map((entry) => entry.id));
      expect(new Set(ids).size).toBe(ids.length);
      return ids.length;
    });
    expect(counts).toEqual(
      [
        knowledge.signs,
        knowledge.forms,
        knowledge.alterations,
        knowledge.shops,
        knowledge.woods,
        knowledge.sources,
      ].map((all) => Object.keys(all).length),
    );
  });

  test('words narrow, and words that are nowhere leave nothing', () => {
    const { knowledge } = books;
    if (knowledge === undefined)
      throw new Error('the knowledge does not compile: npm run knowledge says why');
    const all = shelfGroups('signs', knowledge);
    const some = groupsWithWords(all, 'Saw arcs').flatMap((group) => group.entries);
    expect(some.length).toBeGreaterThan(0);
    expect(some.every((entry) => entry.text.includes('saw') && entry.text.includes('arcs'))).toBe(true);
    expect(groupsWithWords(all, 'zzz')).toEqual([]);
    expect(groupsWithWords(all, ' ')).toEqual(all.filter((group) => group.entries.length > 0));
  });
});

test('an address names a shelf or an entry; anything else opens the signs', () => {
  expect(askedFor({ sign: 'x' })).toEqual({ shelf: 'signs', entry: 'x' });
  expect(askedFor({ shelf: 'shops' })).toEqual({ shelf: 'shops', entry: undefined });
  expect(askedFor({ shelf: 'nowhere' })).toEqual({ shelf: 'signs', entry: undefined });
});
