import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import reference from '../../test/reference/fairDivision.json' with { type: 'json' };
import { runById } from './runById.ts';
import { noKnowledge, outputOf } from './testing/outputOf.ts';
import { worthDivision } from './worthDivision.ts';

// Published and reckoned examples with their sources: test/reference/fairDivision.json.

type Bids = Record<string, Record<string, number>>;
type Asked = { heirs: string[]; items: string[]; bids: Bids; keepTogether?: string[][] };
const divide = (method: string, asked: object) => outputOf(worthDivision, { ...asked, method });
const near = (found: Record<string, number>, wanted: object) => {
  for (const [heir, value] of Object.entries(wanted))
    expect(Math.abs((found[heir] as number) - (value as number)), heir).toBeLessThanOrEqual(
      reference.tolerance,
    );
};

describe('examples from outside', () => {
  test.each(reference.sealedBids)('sealed bids: $id', ({ input, expected }) => {
    const found = divide('sealed-bids', input);
    for (const [item, heir] of Object.entries(expected.awards)) expect(found.shares[heir]).toContain(item);
    near(found.payments, expected.final_cash);
    near(found.fairShare, expected.fair_share);
    near(found.ownValue, expected.final_value_in_own_eyes);
    near({ surplus: found.surplus as number }, { surplus: expected.surplus });
    expect(found.properties).toEqual(expect.arrayContaining(found.guaranteed));
  });

  test.each(reference.adjustedWinner)('adjusted winner: $id', ({ input, expected }) => {
    const found = divide('adjusted-winner', input);
    const [first, second] = input.heirs as [string, string];
    expect(found.ties).toEqual(expected.ties);
    expect(found.pointsAtFirst).toEqual(expected.atFirst);
    expect(found.split?.items).toEqual([expected.split]);
    near({ givenUp: found.split?.givenUp as number }, { givenUp: expected.givenUp });
    for (const [item, share] of Object.entries(expected.firstShare)) {
      if (item === expected.split) near(found.split?.parts as Record<string, number>, { [first]: share });
      else expect(found.shares[share === 1 ? first : second]).toContain(item);
    }
    near(found.ownValue, { [first]: expected.equal, [second]: expected.equal });
    expect(found.properties).toEqual(expect.arrayContaining(found.guaranteed));
  });

  test.each(reference.maximin)('the highest least share: $id', ({ input, expected }) => {
    const found = divide('maximin', input);
    const best = expected.best.find(
      ({ allocation }) => JSON.stringify(allocation) === JSON.stringify(found.shares),
    );
    expect(best, JSON.stringify(found.shares)).toBeDefined();
    near(found.ownValue, best?.values as object);
    expect(Math.min(...Object.values(found.ownValue))).toBe(expected.least);
    expect({
      envyFree: found.properties.includes('envy-free'),
      envyFreeUpToOne: found.properties.includes('envy-free-up-to-one'),
      proportional: found.properties.includes('proportional'),
    }).toMatchObject({
      envyFree: best?.envyFree,
      envyFreeUpToOne: best?.envyFreeUpToOne,
      proportional: best?.proportional,
    });
    expect(found.proved).toBe(true);
  });
});

const estates = (most: number, many: [number, number]) =>
  fc.integer({ min: many[0], max: many[1] }).chain((heirs) =>
    fc.integer({ min: 1, max: most }).chain((items) =>
      fc
        .array(fc.array(fc.integer({ min: 0, max: 40 }), { minLength: items, maxLength: items }), {
          minLength: heirs,
          maxLength: heirs,
        })
        .map((rows): Asked => {
          const names = rows.map((_, heir) => `heir ${heir}`);
          const pieces = Array.from({ length: items }, (_, item) => `piece ${item}`);
          const bids = Object.fromEntries(
            rows.map((row, heir) => [
              names[heir],
              Object.fromEntries(row.map((bid, item) => [pieces[item], bid])),
            ]),
          );
          return { heirs: names, items: pieces, bids: bids as Bids };
        }),
    ),
  );

/** The values, least first, of the best of all allocations: gone through one by one. */
function bestOfAll({ heirs, items, bids }: Asked): number[] {
  let best: number[] = heirs.map(() => -1);
  for (let code = 0; code < heirs.length ** items.length; code++) {
    const had = heirs.map(() => 0);
    for (const [index, item] of items.entries()) {
      const heir = Math.floor(code / heirs.length ** index) % heirs.length;
      had[heir] = (had[heir] as number) + (bids[heirs[heir] as string]?.[item] as number);
    }
    const rising = had.toSorted((a, b) => a - b);
    const differs = rising.findIndex((value, index) => value !== best[index]);
    if (differs >= 0 && (rising[differs] as number) > (best[differs] as number)) best = rising;
  }
  return best;
}

describe('what must hold of any estate', () => {
  test('no allocation of a small estate has a higher least, nor a higher next', () => {
    fc.assert(
      fc.property(estates(6, [2, 4]), (asked) => {
        const { ownValue, proved } = divide('maximin', asked);
        expect(proved).toBe(true);
        expect(Object.values(ownValue).toSorted((a, b) => a - b)).toEqual(bestOfAll(asked));
      }),
      { seed: 7, numRuns: 120 },
    );
  });

  test('under sealed bids money adds up to nothing, to the cent, and all that is guaranteed holds', () => {
    fc.assert(
      fc.property(estates(8, [2, 7]), (asked) => {
        const { toPay, payments, properties, guaranteed } = divide('sealed-bids', asked);
        expect(Object.values(toPay).reduce((cents, each) => cents + Math.round(each * 100), 0)).toBe(0);
        for (const heir of asked.heirs)
          expect(Math.abs((toPay[heir] as number) - (payments[heir] as number))).toBeLessThan(0.01);
        expect(properties).toEqual(expect.arrayContaining(guaranteed));
      }),
      { seed: 7, numRuns: 150 },
    );
  });

  test('adjusted winner leaves nobody envious, splits one lot at most, and gives both the same', () => {
    fc.assert(
      fc.property(estates(7, [2, 2]), (asked) => {
        const [first, second] = asked.heirs.map((heir) =>
          Object.values(asked.bids[heir] ?? {}).reduce((a, b) => a + b, 0),
        );
        const even = (heir: number, by: number) =>
          Object.fromEntries(
            asked.items.map((item) => [item, (asked.bids[`heir ${heir}`]?.[item] ?? 0) * by]),
          );
        const scaled = {
          ...asked,
          bids: { 'heir 0': even(0, second as number), 'heir 1': even(1, first as number) },
        };
        const { ownValue, envy, properties, guaranteed } = divide('adjusted-winner', scaled);
        expect(envy).toEqual([]);
        expect(properties).toEqual(expect.arrayContaining(guaranteed));
        expect(ownValue['heir 0']).toBeCloseTo(ownValue['heir 1'] as number, 6);
      }),
      { seed: 7, numRuns: 150 },
    );
  });

  test.each(['sealed-bids', 'adjusted-winner', 'maximin'])(
    '%s keeps together what is to stay together',
    (method) => {
      const asked = {
        heirs: ['Ann', 'Ben'],
        items: ['armchair', 'desk', 'side chairs', 'mirror', 'footstool'],
        bids: {
          Ann: { armchair: 40, desk: 10, 'side chairs': 5, mirror: 30, footstool: 15 },
          Ben: { armchair: 5, desk: 30, 'side chairs': 45, mirror: 10, footstool: 10 },
        },
        keepTogether: [['armchair', 'side chairs'], ['side chairs', 'footstool']], // biome-ignore format: a row
      };
      const { shares, split } = divide(method, asked);
      const set = ['armchair', 'side chairs', 'footstool'];
      const holders = Object.values(shares).filter((items) => items.some((item) => set.includes(item)));
      for (const items of holders) expect(items).toEqual(expect.arrayContaining(set));
      if (split === undefined) expect(holders).toHaveLength(1);
    },
  );
});

describe('bad input gives one plain sentence that says what to do', () => {
  const asked = { heirs: ['Ann', 'Ben'], items: ['desk', 'clock'], method: 'sealed-bids' };
  const bids = { Ann: { desk: 3, clock: 1 }, Ben: { desk: 2, clock: 2 } };
  test.each<[object, string, string]>([
    [{ bids: { Ann: bids.Ann, Ben: { desk: 2 } } }, 'bids.Ben', 'no bid on clock'],
    [{ bids: { ...bids, Cy: bids.Ben } }, 'bids.Cy', 'not among the heirs'],
    [{ bids: { ...bids, Ben: { ...bids.Ben, lamp: 1 } } }, 'bids.Ben.lamp', 'not among the items'],
    [{ bids, keepTogether: [['desk', 'lamp']] }, 'keepTogether[0]', 'not among the items'],
    [{ bids, items: ['desk', 'clock', 'desk'] }, 'items', '“desk” is there twice'],
    [
      { bids: { Ann: bids.Ann, Ben: { desk: 2, clock: 3 } }, method: 'adjusted-winner' },
      'bids',
      'the same number',
    ],
    [{ bids: { Ann: bids.Ann, Ben: { desk: 2, clock: -2 } } }, 'bids.Ben.clock', 'at least 0'],
  ])('%o', (more, path, words) => {
    const result = runById('worth.division', { ...asked, ...more }, noKnowledge);
    if (result.ok) throw new Error('no fault');
    expect(result.faults).toHaveLength(1);
    expect(result.faults[0]?.path).toBe(path);
    expect(result.faults[0]?.message).toContain(words);
  });
});
