import { describe, expect, test } from 'vitest';
import { houseKnowledge } from '../../test/kits/houseKnowledge.ts';
import type { CalculationContext } from './define.ts';
import { runById } from './runById.ts';
import { outputOf } from './testing/outputOf.ts';
import { wearContact } from './wearContact.ts';

const knowledge = await houseKnowledge();
const context: CalculationContext = { knowledge, yearNow: 2026 };

const contact = (input: object) => outputOf(wearContact, input, context);

const example = wearContact.example as { worn: [{ part: string; grid: number[][] }] };

describe('the front stretcher of a chair', () => {
  test('worn on top by feet it agrees, and speaks for natural use', () => {
    const { score } = contact(example);
    expect(score?.auc).toBeGreaterThan(0.9);
    expect(score?.worn).toBe('in-places');
    expect(score?.contrary).toEqual([]);
  });

  test('the same wear beneath and a sharp top speak against it, and are named', () => {
    const [{ part, grid }] = example.worn;
    const { score } = contact({ ...example, worn: [{ part, grid: [grid[3], grid[2], grid[1], grid[0]] }] });
    expect(score?.auc).toBeLessThan(0.3);
    expect(score?.contrary.map(({ face }) => face)).toEqual(['top', 'underside']);
  });

  test('no wear at all, or the same everywhere, leaves no agreement to be told, and says which', () => {
    const [{ part, grid }] = example.worn;
    const { score } = contact({ ...example, worn: [{ part, grid: grid.map((row) => row.map(() => 0)) }] });
    expect(score).toMatchObject({ auc: null, worn: 'nowhere' });
    const all = contact({ ...example, worn: [{ part, grid: grid.map((row) => row.map(() => 0.5)) }] });
    expect(all.score).toMatchObject({ auc: null, worn: 'everywhere' });
  });
});

test('parts of every form are either known to be touched or said to be unknown; those of seats and cases are known', () => {
  for (const form of Object.keys(knowledge.forms)) {
    const { surfaces, unknown, score } = contact({ form });
    expect({ form, some: surfaces.length + unknown.length > 2 }).toEqual({ form, some: true });
    expect(score).toBeNull();
  }
  for (const form of ['side-chair', 'armchair', 'windsor-chair', 'stool', 'chest-of-drawers'])
    expect({ form, known: contact({ form }).surfaces.length > 2 }).toEqual({ form, known: true });
});

describe('bad input gives one plain sentence that says what to do', () => {
  const grid = example.worn[0].grid;
  test.each<[string, object, string, string]>([
    ['form', { form: 'throne' }, 'form', 'take one of armchair'],
    ['part', { form: 'side-chair', parts: ['front-stretcher'] }, 'parts[0]', 'with these features'],
    ['measure', { form: 'side-chair', measures: { 'seat-height': -5 } }, 'measures.seat-height', 'above 0'],
    ['surface', { ...example, worn: [{ part: 'arm', grid }] }, 'worn[0].part', 'take one of front-stretcher'],
    [
      'faces',
      { ...example, worn: [{ part: 'front-stretcher', grid: grid.slice(1) }] },
      'worn[0].grid',
      'a row for each',
    ],
  ])('%s', (_, input, path, words) => {
    // biome-ignore format: a table
    const result = runById('wear.contact', input, context);
    if (result.ok) throw new Error('no fault');
    expect(result.faults).toHaveLength(1);
    expect(result.faults[0]?.path).toBe(path);
    expect(result.faults[0]?.message).toContain(words);
  });
});
