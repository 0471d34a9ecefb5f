import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { listed } from '../ground/words.ts';
import { divideEstate, divisionMethods, divisionProperties, guarantees } from '../worth/divideEstate.ts';
import { type Exact, exact, toTheCent, total } from '../worth/exactMoney.ts';
import { estateOf } from '../worth/lots.ts';
import { defineCalculation } from './define.ts';

const name = z.string().trim().min(1).max(200);
const sum = z.number().min(0).max(1e12);

const input = z.strictObject({
  heirs: z.array(name).min(2).max(8),
  items: z.array(name).min(1).max(60),
  /** What each heir sets on each item: money under sealed bids, points under the other two. */
  bids: z.record(name, z.record(name, sum)),
  method: z.enum(divisionMethods),
  /** Items that go to one heir together. */
  keepTogether: z.array(z.array(name).min(2)).max(30).default([]),
});
type Input = z.infer<typeof input>;

/** `worth.division`: see its own fields. */
export const worthDivision = defineCalculation({
  id: 'worth.division',
  answers: 'How do heirs share out pieces so that each has a fair part in their own eyes, and who pays whom?',
  method:
    'sealed-bids: each lot to the highest bid (of equal ones the heir listed first); each heir is brought in money to an equal part of their own total, and the surplus is split equally; ' +
    'payments are exact fractions and toPay is their whole cents, adding up to nothing (cents that are over go first to those that rounding cut most). adjusted-winner, for two heirs with the same total: each lot to whom it is worth more, then lots pass over in ' +
    'rising order of points given over points taken, one of them in part, until both have the same; split tells the share of it. maximin: whole lots, no money; the least that an heir has by their own values is as high as can be, then the next. ' +
    'Each keepTogether is one lot, valued by the sum of its bids. ownValue is each heir’s share in their own eyes, envy who would rather have another’s share, with its money, and by how much. properties are those that hold of this outcome; guaranteed ' +
    'are those the method gives whatever the bids. efficient: no other division without further money is better for one and worse for none (with sealed bids: the sum of all values is highest). All rests on bids that are meant: whoever knows the others’ can gain by bidding falsely. ' +
    'proved is false where the search for maximin was stopped before it was proved that nothing better is there.',
  source:
    'Knaster’s sealed bids; adjusted winner, Brams and Taylor (1996); the leximin order: from memory, held against published examples.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    shares: z.record(z.string(), z.array(z.string())),
    payments: z.record(z.string(), z.number()),
    toPay: z.record(z.string(), z.number()),
    ownValue: z.record(z.string(), z.number()),
    fairShare: z.record(z.string(), z.number()),
    envy: z.array(z.strictObject({ heir: z.string(), of: z.string(), by: z.number() })),
    properties: z.array(z.enum(divisionProperties)),
    guaranteed: z.array(z.enum(divisionProperties)),
    surplus: z.number().optional(),
    /** The lot that two heirs share, and the part of it that each has. */
    split: z
      .strictObject({
        items: z.array(z.string()),
        parts: z.record(z.string(), z.number()),
        givenUp: z.number(),
      })
      .optional(),
    /** Items on which both heirs set the same points. */
    ties: z.array(z.string()).optional(),
    /** The points each has before lots pass over, ties given out. */
    pointsAtFirst: z.record(z.string(), z.number()).optional(),
    proved: z.boolean(),
  }),
  example: {
    heirs: ['Ann', 'Ben'],
    items: ['desk', 'armchair', 'side chairs'],
    bids: {
      Ann: { desk: 4000, armchair: 900, 'side chairs': 1500 },
      Ben: { desk: 3000, armchair: 1200, 'side chairs': 2000 },
    },
    method: 'sealed-bids',
    keepTogether: [['armchair', 'side chairs']],
  },
  run: (asked) => {
    const faults = faultsOf(asked);
    if (faults.length > 0) return { ok: false, faults };
    const { heirs, items, bids, method, keepTogether } = asked;
    const estate = estateOf(heirs, items, bids, keepTogether);
    const divided = divideEstate(estate, method);
    const perHeir = (values: readonly Exact[]) =>
      byHeir(
        heirs,
        values.map((each) => each.valueOf()),
      );
    const lotItems = (lot: number) => [...(estate.lots[lot]?.items ?? [])];
    const { split, surplus, ties, tentative, proved } = divided;
    return {
      ok: true,
      output: {
        shares: byHeir(
          heirs,
          divided.share.map((held) => held.flatMap((part, lot) => (part.gt(0) ? lotItems(lot) : []))),
        ),
        payments: perHeir(divided.payments),
        toPay: byHeir(heirs, toTheCent(divided.payments)),
        ownValue: perHeir(divided.worth.map((row, heir) => row[heir] as Exact)),
        fairShare: perHeir(estate.values.map((row) => total(row).div(heirs.length))),
        envy: divided.envy.map(({ heir, of, by }) => ({
          heir: heirs[heir] as string,
          of: heirs[of] as string,
          by: by.valueOf(),
        })),
        properties: divided.holds,
        guaranteed: [...guarantees[method]],
        ...(surplus === undefined ? {} : { surplus: surplus.valueOf() }),
        ...(split === undefined
          ? {}
          : {
              split: {
                items: lotItems(split.lot),
                parts: perHeir(divided.share.map((held) => held[split.lot] as Exact)),
                givenUp: split.givenUp.valueOf(),
              },
            }),
        ...(ties === undefined ? {} : { ties: ties.flatMap(lotItems) }),
        ...(tentative === undefined ? {} : { pointsAtFirst: perHeir(tentative) }),
        proved,
      },
    };
  },
});

function byHeir<Value>(heirs: readonly string[], values: readonly Value[]): Record<string, Value> {
  return Object.fromEntries(heirs.map((heir, index) => [heir, values[index] as Value]));
}

function faultsOf(asked: Input): Fault[] {
  const { heirs, items, bids, method, keepTogether } = asked;
  const fault = (code: string, path: string, message: string): Fault => ({
    code: `worth.${code}`,
    path,
    message,
  });
  const twice = [
    ...repeated(heirs).map((each) => ['heirs', each]),
    ...repeated(items).map((each) => ['items', each]),
  ];
  const faults = twice.map(([path = '', each]) =>
    fault('named-twice', path, `“${each}” is there twice: give each a name of its own.`),
  );
  for (const [heir, row] of Object.entries(bids)) {
    if (!heirs.includes(heir))
      faults.push(
        fault(
          'no-such-heir',
          `bids.${heir}`,
          `“${heir}” bids and is not among the heirs: add the name to heirs, or take the bids out.`,
        ),
      );
    for (const item of Object.keys(row).filter((each) => !items.includes(each)))
      faults.push(
        fault(
          'no-such-item',
          `bids.${heir}.${item}`,
          `“${item}” is not among the items: add it to items, or take the bid out.`,
        ),
      );
  }
  for (const heir of heirs) {
    const lacking = items.filter((item) => !Object.hasOwn(bids[heir] ?? {}, item));
    if (lacking.length > 0)
      faults.push(
        fault(
          'bid-missing',
          `bids.${heir}`,
          `${heir} has no bid on ${listed(lacking)}: write 0 where it is worth nothing to them.`,
        ),
      );
  }
  for (const [index, group] of keepTogether.entries())
    for (const item of group.filter((each) => !items.includes(each)))
      faults.push(
        fault(
          'no-such-item',
          `keepTogether[${index}]`,
          `“${item}” is to stay with others and is not among the items.`,
        ),
      );
  if (faults.length > 0 || method !== 'adjusted-winner') return faults;
  if (heirs.length !== 2)
    return [
      fault('two-heirs', 'heirs', 'Adjusted winner is for two heirs: take sealed bids or maximin for more.'),
    ];
  const [first, second] = heirs.map((heir) =>
    total(items.map((item) => exact(bids[heir]?.[item] as number))),
  );
  if ((first as Exact).equals(second as Exact)) return [];
  const message = `${heirs[0]} spread ${first?.valueOf()} points and ${heirs[1]} ${second?.valueOf()}: both need the same number, 100 for instance.`;
  return [fault('unequal-points', 'bids', message)];
}

function repeated(names: readonly string[]): string[] {
  return [...new Set(names.filter((each, index) => names.indexOf(each) < index))];
}
