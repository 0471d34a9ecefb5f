import { describe, expect, test } from 'vitest';
import reference from '../../test/reference/statistics.json' with { type: 'json' };
import type { CalculationContext } from './define.ts';
import { runById } from './runById.ts';
import { setsLikeness } from './setsLikeness.ts';
import { outputOf } from './testing/outputOf.ts';

// Values and their sources: test/reference/statistics.json.

const context = { yearNow: 2026 } as CalculationContext;

const likeness = (input: object) => outputOf(setsLikeness, input);

const example = setsLikeness.example as { members: { id: string }[] };
const row = (values: number[]) => values.map((width, index) => ({ id: String(index), measures: { width } }));

test.each(reference.robust)('calls out the wild one of $id', ({ x, median, mad }) => {
  const wild = x.indexOf(Math.max(...x));
  const { outliers } = likeness({ members: row(x), sigmaMm: 0.1 });
  const found = outliers.find(({ id }) => id === String(wild));
  expect(found?.z).toBeCloseTo((0.6745 * ((x[wild] as number) - median)) / mad, 6);
  expect(found?.test).toBe('modified-z and extreme-deviates');
});

describe('a set of five and an armchair', () => {
  test('the low chair stands out and is a group of its own; the armchair is wide as made armchairs are', () => {
    const found = likeness(example);
    expect(found.outliers.map(({ id, measure }) => [id, measure])).toEqual([['V', 'seat-height']]);
    expect(found.groups).toEqual([['I', 'II', 'III', 'IIII'], ['V'], ['A']]);
    expect(found.armchairWidthDifferenceMm).toBe(116);
    expect(found.armchairWidth.seat?.differenceMm).toBe(52);
    expect(found.notes.join(' ')).toContain('4½ in');
    expect(found.notes.join(' ')).toContain('as those of made armchairs are');
  });

  test('a side chair with arms put on has too narrow a seat', () => {
    const members = example.members.map((member) =>
      member.id === 'A' ? { ...member, measures: { width: 640, 'seat-width-front': 533 } } : member,
    );
    const found = likeness({ members });
    expect(found.notes.join(' ')).toContain('whether arms were added');
  });

  test('nothing is judged by sizes out of a catalogue', () => {
    const found = likeness({ ...example, source: 'catalogue' });
    expect(found).toMatchObject({ outliers: [], groups: [], judged: false });
    expect(found.armchairWidth.seat?.sigmaMm).toBeGreaterThan(20);
    expect(found.notes.join(' ')).toContain('too near the bound');
  });
});

describe('bad input gives one plain sentence that says what to do', () => {
  test.each<[object, string, string]>([
    [{ members: row([500]) }, 'members', 'at least 2'],
    [{ members: row([500, -3]) }, 'members[1].measures.width', 'above 0'],
    [{ members: [...row([500, 510]), { id: '1', measures: {} }] }, 'members[2].id', 'its own name'],
    [{ members: row([500, 510]), source: 'hearsay' }, 'source', 'measured, catalogue'],
  ])('%o', (input, path, words) => {
    const result = runById('sets.likeness', input, context);
    if (result.ok) throw new Error('no fault');
    expect(result.faults).toHaveLength(1);
    expect(result.faults[0]?.path).toBe(path);
    expect(result.faults[0]?.message).toContain(words);
  });
});
