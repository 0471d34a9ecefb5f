import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import type { CalculationContext } from './define.ts';
import { inputFaults } from './inputFaults.ts';
import { runById } from './runById.ts';

const context = { yearNow: 2026 } as CalculationContext;

describe('an input that can’t be used', () => {
  test('an unknown calculation is a fault that lists the known ones', () => {
    const result = runById('wood.dance', {}, context);
    expect(result).toMatchObject({ ok: false, faults: [{ code: 'calculations.unknown' }] });
    if (!result.ok) expect(result.faults[0]?.message).toContain('inference.posterior');
  });

  test('every fault is listed at once, one plain sentence each, with its path', () => {
    const result = runById(
      'inference.posterior',
      { variables: [{ id: 'a' }], rows: 3, evidence: { a: 1 } },
      context,
    );
    expect(result).toEqual({
      ok: false,
      faults: [
        { code: 'input.missing', path: 'variables[0].states', message: 'This field is missing: add a list.' },
        { code: 'input.missing', path: 'tables', message: 'This field is missing: add a list.' },
        { code: 'input.wrong-value', path: 'evidence.a', message: '1 can’t stand here: write a text.' },
        {
          code: 'input.unknown-field',
          path: 'rows',
          message: 'There is no field “rows” here: take it out, or mend its name.',
        },
      ],
    });
  });

  test('faults of the network itself come with the paths of the same fields', () => {
    const input = {
      variables: [{ id: 'a', states: ['x', 'y'] }],
      tables: [{ variable: 'a', rows: [[0.5, 0.6]] }],
      evidence: { b: 'x' },
    };
    expect(runById('inference.posterior', input, context)).toEqual({
      ok: false,
      faults: [
        {
          code: 'inference.row-sum',
          path: 'tables[0].rows[0]',
          message: 'A row of “a” sums to 1.1: make it sum to 1.',
        },
      ],
    });
  });
});

describe('a number past what a whole number can be', () => {
  test.each<[string, object, string, string]>([
    ['sets.size', { numbersSeen: [1e300, 2] }, 'numbersSeen[0]', 'write a number of at most 10000.'],
    ['sets.size', { numbersSeen: [2, -1e300] }, 'numbersSeen[1]', 'write a number of at least 1.'],
    [
      'photo.grain',
      { file: 'a.png', region: { x: 1e300, y: 0, widthPx: 9, heightPx: 9 } },
      'region.x',
      'write a smaller whole number.',
    ],
  ])('is one fault: %s %o', (id, input, path, words) => {
    const result = runById(id, input, context);
    if (result.ok) throw new Error('no fault');
    expect(result.faults).toHaveLength(1);
    expect(result.faults[0]?.path).toBe(path);
    expect(result.faults[0]?.message).toContain(words);
  });
});

describe('the sentences for what a schema finds', () => {
  const schema = z.strictObject({
    number: z.number().positive(),
    some: z.array(z.string()).min(1),
    choice: z.enum(['oak', 'elm']),
    whole: z.int().max(3),
    either: z.union([z.string(), z.number()]),
    pair: z.tuple([z.number(), z.number()]),
    form: z.string().regex(/^a/, 'an id begins with a'),
    cut: z.union([z.enum(['flat', 'quarter']), z.strictObject({ ringAngleDeg: z.number() })]),
  });
  const right = {
    number: 1,
    some: ['x'],
    choice: 'oak',
    whole: 2,
    either: 'x',
    pair: [1, 2],
    form: 'ab',
    cut: 'flat',
  };

  test.each<[object, string, string]>([
    [{ number: -1 }, 'number', '-1 can’t stand here: write a number above 0.'],
    [{ number: '1' }, 'number', '“1” can’t stand here: write a number.'],
    [{ number: null }, 'number', 'null can’t stand here: write a number.'],
    [{ some: [] }, 'some', 'An empty list can’t stand here: write at least 1 entry.'],
    [{ some: ['x', 2] }, 'some[1]', '2 can’t stand here: write a text.'],
    [{ choice: 'ash' }, 'choice', '“ash” can’t stand here: write one of oak, elm.'],
    [{ whole: 1.5 }, 'whole', '1.5 can’t stand here: write a whole number.'],
    [{ whole: 9 }, 'whole', '9 can’t stand here: write a number of at most 3.'],
    [{ either: [] }, 'either', 'An empty list can’t stand here: write a text or a number.'],
    [{ either: undefined }, 'either', 'This field is missing: add a text or a number.'],
    [{ pair: [1] }, 'pair', 'A list of 1 can’t stand here: write at least 2 entries.'],
    [{ form: 'b' }, 'form', '“b” can’t stand here: an id begins with a.'],
    [{ cut: { ringAngleDeg: 'x' } }, 'cut.ringAngleDeg', '“x” can’t stand here: write a number.'],
    [
      { cut: 'round' },
      'cut',
      '“round” can’t stand here: write one of flat, quarter or an object with fields.',
    ],
  ])('%o', (wrong, path, message) => {
    const input = { ...right, ...wrong };
    const read = schema.safeParse(input);
    expect(inputFaults(read.error?.issues ?? [], input)).toEqual([
      { code: expect.any(String), path, message },
    ]);
  });

  test('something else altogether', () => {
    const read = schema.safeParse(5);
    expect(inputFaults(read.error?.issues ?? [], 5)).toEqual([
      { code: 'input.wrong-value', path: '', message: '5 can’t stand here: write an object with fields.' },
    ]);
  });
});
