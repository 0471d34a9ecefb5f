import { z } from 'zod';
import { stepOrder } from '../../dating/dateOrder.ts';
import { stepYears } from '../../dating/stepYears.ts';
import type { Fault } from '../../ground/fault.ts';
import { defineCalculation } from '../define.ts';

const step = z.string().min(1).max(100);
const pair = z.tuple([step, step]);
const years = z.record(step, z.number().min(1000).max(2100)).default({});

const input = z.strictObject({
  /** [earlier, later]: the veneer went on before the polish that lies over it. */
  before: z.array(pair).max(500).default([]),
  /** Years before which a step can’t have been done: its screw, paper or paint was not yet to be had. */
  notBefore: years,
  /** Years by which a step had been done: a dated label, photograph or inventory shows it. */
  notAfter: years,
});
type Input = z.infer<typeof input>;

/** `dating.order`: see its own fields. */
export const datingOrder = defineCalculation({
  id: 'dating.order',
  answers:
    'In what order were the making, the repairs and the coats of finish done, and between which years each?',
  method:
    'What lies over, cuts through or is fixed to another came later. Pairs carry on through others; a pair is redundant where it follows from the rest. level is how many ' +
    'steps must have gone before, along the longest way; orders is in how many ways it can all have happened, counted up to 16 steps. A year before which a step can’t have been done holds for all ' +
    'that came later, a year by which it had been done for all that came earlier; null where nothing bounds an end. conflicts names the bounds that contradict each other: one is wrong, or tells of another part. ' +
    'Steps that each come before the other are the fault dating.loop. At most 100 steps.',
  source:
    'The order is Harris’ (Principles of Archaeological Stratigraphy, 2nd ed. 1989), from memory; bounds carried along an order are common practice.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    steps: z.array(
      z.strictObject({
        id: z.string(),
        level: z.int(),
        years: z.tuple([z.number().nullable(), z.number().nullable()]),
      }),
    ),
    first: z.array(z.string()),
    last: z.array(z.string()),
    redundant: z.array(pair),
    reduced: z.array(pair),
    unordered: z.array(pair),
    longestChain: z.int(),
    orders: z.number().nullable(),
    conflicts: z.array(
      z.strictObject({ notBefore: z.string(), from: z.number(), notAfter: z.string(), to: z.number() }),
    ),
  }),
  example: {
    before: [
      ['carcase', 'drawers'],
      ['drawers', 'first handles'],
      ['first handles', 'second handles'],
      ['second handles', 'polish'],
    ],
    notBefore: { carcase: 1740, 'second handles': 1850 },
    notAfter: { carcase: 1790, polish: 1905 },
  },
  run: (asked) => {
    const named = [...Object.keys(asked.notBefore), ...Object.keys(asked.notAfter)];
    const faults = countFaults(asked, named);
    if (faults.length > 0) return { ok: false, faults };
    const order = stepOrder(asked.before, named);
    if ('loops' in order) return { ok: false, faults: order.loops.map(loopFault) };
    const { years: left, conflicts } = stepYears(order, asked.notBefore, asked.notAfter);
    return {
      ok: true,
      output: {
        steps: order.steps.map((id) => {
          const [from, to] = left.get(id) ?? [];
          const years: [number | null, number | null] = [from ?? null, to ?? null];
          return { id, level: order.level.get(id) ?? 0, years };
        }),
        first: order.steps.filter((id) => !order.steps.some((each) => order.before(each, id))),
        last: order.steps.filter((id) => !order.steps.some((each) => order.before(id, each))),
        redundant: order.redundant,
        reduced: order.reduced,
        unordered: order.unordered,
        longestChain: order.longestChain,
        orders: order.orders ?? null,
        conflicts,
      },
    };
  },
});

function countFaults({ before }: Input, named: readonly string[]): Fault[] {
  const steps = new Set([...before.flat(), ...named]);
  const say = (message: string): Fault[] => [{ code: 'dating.steps', path: 'before', message }];
  if (steps.size === 0) return say('There is no step here: give at least one pair, [earlier, later].');
  if (steps.size > 100)
    return say(`There are ${steps.size} steps: take at most 100 at a time, one part after the other.`);
  return [];
}

function loopFault(loop: readonly string[]): Fault {
  const names = loop.map((each) => `“${each}”`).join(', ');
  const message =
    loop.length === 1
      ? `${names} is said to come before itself: take that pair out.`
      : `${names} are each said to come before the others: look again which of them lies over which, and take one pair out.`;
  return { code: 'dating.loop', path: 'before', message };
}
