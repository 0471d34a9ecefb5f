import { beforeAll, describe, expect, test } from 'vitest';
import { houseKnowledge } from '../../../test/kits/houseKnowledge.ts';
import { askedOf } from '../../knowledge/askedOf.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import { shelfGroups } from './shelves.ts';
import { filtersIn, groupsThatPass, kindsToChoose, type SignFilters } from './signFilters.ts';

describe('the filters of the shelf of signs', () => {
  let knowledge: Knowledge;
  beforeAll(async () => {
    knowledge = await houseKnowledge();
  });
  const left = (filters: SignFilters) =>
    groupsThatPass(shelfGroups('signs', knowledge), filters, knowledge).flatMap((group) =>
      group.entries.flatMap(({ id }) => knowledge.signs[id] ?? []),
    );

  test('none leaves every sign', () => {
    expect(left({})).toHaveLength(Object.keys(knowledge.signs).length);
  });

  test('a form leaves what is asked of one of its parts, and nothing of other furniture', () => {
    const chair = knowledge.forms['side-chair'];
    if (chair === undefined) throw new Error('the side chair is gone');
    const signs = left({ of: 'side-chair' });
    expect(signs.length).toBeGreaterThan(20);
    expect(signs.length).toBeLessThan(Object.keys(knowledge.signs).length);
    for (const sign of signs) {
      expect(
        ['whole', ...chair.parts.map((part) => part.kind)].some((kind) => askedOf(sign, kind, chair)),
      ).toBe(true);
    }
    expect(left({ of: 'no-such-form' })).toEqual([]);
  });

  test('part, cause and need are all met at once', () => {
    const signs = left({ on: 'front-rail', cause: 'tooling', needs: 'turned-over' });
    expect(signs.length).toBeGreaterThan(0);
    for (const sign of signs)
      expect(sign).toMatchObject({
        hangsOn: 'tooling',
        needs: 'turned-over',
        on: expect.arrayContaining(['front-rail']),
      });
    for (const sign of left({ cause: 'alteration' })) expect(sign.hangsOn).toMatch(/^alteration\//);
  });

  test('the kinds to choose are those of the form, the whole piece first', () => {
    expect(kindsToChoose(knowledge.forms, 'side-chair')[0]).toBe('whole');
    expect(kindsToChoose(knowledge.forms, 'side-chair')).not.toContain('drawer');
    expect(kindsToChoose(knowledge.forms, undefined)).toContain('drawer');
  });
});

test('an address that leaves a filter open does not filter', () => {
  expect(filtersIn({ shelf: 'signs', of: 'stool', on: '' })).toEqual({ of: 'stool' });
});
