import { describe, expect, it } from 'vitest';
import { calculations } from '../../src/calculations/registry.ts';
import { runById } from '../../src/calculations/runById.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';
import { testApp } from '../kits/testApp.ts';

const knowledge = await houseKnowledge();

/** The value with one text in it replaced by a name, once for each place where a text can stand, as value or as key. */
function* withNameAt(value: unknown, name: string, depth = 0): Generator<unknown> {
  if (typeof value === 'string') yield name;
  if (Array.isArray(value))
    for (const [index, inner] of value.slice(0, 2).entries())
      for (const other of withNameAt(inner, name, depth + 1)) yield value.with(index, other);
  else if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value);
    for (const [index, [key, inner]] of entries.entries()) {
      for (const other of withNameAt(inner, name, depth + 1))
        yield Object.fromEntries(entries.with(index, [key, other]));
      if (depth > 0 && index === 0) yield Object.fromEntries(entries.with(index, [name, inner]));
    }
  }
}

/** An example without what only takes time. */
const inShort = (example: unknown) =>
  typeof example === 'object' && example !== null && 'draws' in example
    ? { ...example, draws: 0, quick: true }
    : example;

// A table read from JSON answers to these, though nobody put them in.
describe.each(['__proto__', 'constructor', 'toString'])('the name %s', (name) => {
  it.each(calculations.filter((one) => one.pictures === undefined))(
    'breaks nothing in $id',
    ({ id, example }) => {
      for (const input of withNameAt(inShort(example), name)) {
        const result = runById(id, input, { yearNow: 2026, knowledge });
        if (!result.ok) expect(result.faults[0]?.message).toMatch(/\w/);
      }
    },
  );

  it('is no form of furniture', () => {
    const faultsOf = (id: string, change: object) => {
      const example = calculations.find((one) => one.id === id)?.example as object;
      const result = runById(id, { ...example, ...change }, { yearNow: 2026, knowledge });
      return result.ok ? [] : result.faults.map((fault) => fault.code);
    };
    expect(faultsOf('evidence.weigh', { form: name })).toHaveLength(1);
    expect(faultsOf('wear.contact', { form: name })).toHaveLength(1);
  });

  it.each([
    'field-guide.pdf?form=',
    'field-guide.pdf?family=',
    'pieces/',
    'jobs/',
    'photos/',
    'calc/',
    'own-knowledge/',
  ])('is answered plainly at /api/%s', async (path) => {
    const { get, faults } = await testApp();
    const { status } = await get(`/api/${path}${name}`);
    expect([404, 405]).toContain(status);
    expect(faults).toEqual([]);
  });
});
