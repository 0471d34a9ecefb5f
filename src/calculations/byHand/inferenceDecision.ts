import { z } from 'zod';
import type { Fault } from '../../ground/fault.ts';
import { decision } from '../../inference/decision.ts';
import { defineCalculation } from '../define.ts';

const name = z.string().min(1).max(100);
const probability = z.number().min(0).max(1);
const money = z.number().min(-1e12).max(1e12);

const input = z.strictObject({
  /** State → probability; sums to 1. */
  prior: z.record(name, probability),
  /** Action → state → what comes of it; every action with every state. */
  payoff: z.record(name, z.record(name, money)),
  /** What a look may show → state → how probable it is then; sums to 1 for each state. */
  signals: z.record(name, z.record(name, probability)).default({}),
  /** What the look costs, in the unit of the payoffs. */
  cost: z.number().min(0).max(1e12).default(0),
});
type Input = z.infer<typeof input>;

/** `inference.decision`: see its own fields. */
export const inferenceDecision = defineCalculation({
  id: 'inference.decision',
  answers: 'Which course is best while the state is unsure, and is a further look or test worth its cost?',
  method:
    'expected is the payoff of each action, weighed by the probabilities; best has the most. perfectInformation is what knowing the state would add; a test that costs more is never worth it. For each thing a look may show: its probability, the probabilities after it, ' +
    'the best action then. lookAdds is what the look adds before its cost, netOfCost what is left of value and lookAdds after it; worthwhile says whether lookAdds is above the cost. Payoffs count as they stand: someone who fears a loss should lower them.',
  source:
    'Raiffa and Schlaifer, Applied Statistical Decision Theory (1961), from memory; compared with the textbook’s oil driller.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    expected: z.record(z.string(), z.number()),
    best: z.string(),
    value: z.number(),
    perfectInformation: z.number(),
    signals: z.array(
      z.strictObject({
        signal: z.string(),
        probability: z.number(),
        posterior: z.record(z.string(), z.number()),
        best: z.string(),
        value: z.number(),
      }),
    ),
    lookAdds: z.number(),
    netOfCost: z.number(),
    worthwhile: z.boolean(),
  }),
  example: {
    prior: { period: 0.4, later: 0.6 },
    payoff: { buy: { period: 6000, later: -2500 }, leave: { period: 0, later: 0 } },
    signals: { 'old wood': { period: 0.9, later: 0.2 }, 'new wood': { period: 0.1, later: 0.8 } },
    cost: 300,
  },
  run: (asked) => {
    const faults = faultsOf(asked);
    if (faults.length > 0) return { ok: false, faults };
    const found = decision(asked.prior, asked.payoff, asked.signals);
    return {
      ok: true,
      output: {
        ...found,
        netOfCost: found.value + found.lookAdds - asked.cost,
        worthwhile: found.lookAdds > asked.cost,
      },
    };
  },
});

function faultsOf({ prior, payoff, signals }: Input): Fault[] {
  const states = Object.keys(prior);
  const fault = (path: string, message: string): Fault => ({ code: 'inference.decision', path, message });
  const whole = states.reduce((sum, state) => sum + (prior[state] as number), 0);
  if (Math.abs(whole - 1) > 1e-9)
    return [fault('prior', `The probabilities sum to ${Number(whole.toPrecision(6))}: make them sum to 1.`)];
  if (Object.keys(payoff).length === 0)
    return [fault('payoff', 'There is nothing to choose from: give at least one action.')];
  const uneven = [['payoff', payoff] as const, ['signals', signals] as const].flatMap(([field, table]) =>
    Object.entries(table).flatMap(([row, values]) => [
      ...states
        .filter((state) => values[state] === undefined)
        .map((state) =>
          fault(`${field}.${row}`, `“${row}” says nothing of “${state}”: give a number for it.`),
        ),
      ...Object.keys(values)
        .filter((state) => prior[state] === undefined)
        .map((state) =>
          fault(
            `${field}.${row}.${state}`,
            `“${state}” has no probability: add it to prior, or mend its name.`,
          ),
        ),
    ]),
  );
  if (uneven.length > 0 || Object.keys(signals).length === 0) return uneven;
  return states.flatMap((state) => {
    const sum = Object.values(signals).reduce((total, each) => total + (each[state] as number), 0);
    if (Math.abs(sum - 1) <= 1e-9) return [];
    const message = `What may be seen where “${state}” holds sums to ${Number(sum.toPrecision(6))}: make it sum to 1.`;
    return [fault('signals', message)];
  });
}
