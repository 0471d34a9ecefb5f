import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exact } from './exactMoney.ts';
import type { Estate } from './lots.ts';
import { maximin } from './maximin.ts';
import { maximinProgram } from './maximinProgram.ts';

const estates = fc
  .tuple(fc.integer({ min: 2, max: 4 }), fc.integer({ min: 1, max: 6 }))
  .chain(([heirs, lots]) => {
    const row = fc.array(fc.integer({ min: 0, max: 4000 }), { minLength: lots, maxLength: lots });
    return fc.array(row, { minLength: heirs, maxLength: heirs });
  })
  .map(
    (rows): Estate => ({
      heirs: rows.map((_, heir) => `heir ${heir}`),
      lots: (rows[0] ?? []).map((_, lot) => ({ items: [`lot ${lot}`] })),
      values: rows.map((row) => row.map((cents) => exact(cents / 100))),
    }),
  );

/** What each heir has of it, least first, in cents. */
function rising({ values }: Estate, holder: readonly number[]): number[] {
  return values
    .map((row, heir) =>
      row.reduce(
        (sum, value, lot) => (holder[lot] === heir ? sum + Math.round(value.valueOf() * 100) : sum),
        0,
      ),
    )
    .toSorted((a, b) => a - b);
}

test('going through and the program find shares of the same height', () => {
  fc.assert(
    fc.property(estates, (estate) => {
      const [through, program] = [maximin(estate), maximinProgram(estate)];
      expect([through.proved, program.proved]).toEqual([true, true]);
      expect(rising(estate, program.holder)).toEqual(rising(estate, through.holder));
    }),
    { seed: 11, numRuns: 60 },
  );
});

test('where there are too many to go through the program answers, and says whether it is proved', () => {
  fc.assert(
    fc.property(estates, (estate) => {
      const cut = maximin(estate, 3);
      expect(cut.proved).toBe(true);
      expect(rising(estate, cut.holder)).toEqual(rising(estate, maximin(estate).holder));
    }),
    { seed: 12, numRuns: 20 },
  );
});

// Nine lots of nearly one worth: hard for a program, and hardly anything to go through.
test('an estate that a program can hardly prove is proved by going through', () => {
  const values = [0, 1, 2].map((heir) =>
    Array.from({ length: 9 }, (_, lot) => exact(500 + ((lot * 7 + heir * 5) % 11))),
  );
  const estate = {
    heirs: ['a', 'b', 'c'],
    lots: values[0]?.map((_, lot) => ({ items: [`${lot}`] })) ?? [],
    values,
  };
  expect(maximin(estate).proved).toBe(true);
});
