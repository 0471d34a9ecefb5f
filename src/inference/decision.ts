/** What to do where the state is unsure, and what it would be worth to know more. */
export type Decision = {
  /** Action → expected payoff. */
  expected: Record<string, number>;
  best: string;
  value: number;
  /** What knowing the state for certain would add. */
  perfectInformation: number;
  /** Each sign that a look can give, with what it would lead to; signs that can’t come are left out. */
  signals: {
    signal: string;
    probability: number;
    posterior: Record<string, number>;
    best: string;
    value: number;
  }[];
  /** What the look adds before its cost. */
  lookAdds: number;
};

type Table = Readonly<Record<string, Readonly<Record<string, number>>>>;

/**
 * The action of highest expected payoff, without a look and after each sign that the look can give.
 *
 * @param prior    state → probability, summing to 1
 * @param payoff   action → state → payoff, every action with every state
 * @param signals  sign → state → probability of the sign in that state; sums to 1 over signs, state by state
 * @source Raiffa and Schlaifer, Applied Statistical Decision Theory (1961), from memory
 */
export function decision(
  prior: Readonly<Record<string, number>>,
  payoff: Table,
  signals: Table = {},
): Decision {
  const states = Object.keys(prior);
  const at = (table: Readonly<Record<string, number>>, state: string) => table[state] as number;
  const expectedUnder = (belief: Readonly<Record<string, number>>) =>
    Object.fromEntries(
      Object.entries(payoff).map(([action, values]) => [
        action,
        states.reduce((sum, state) => sum + at(belief, state) * at(values, state), 0),
      ]),
    );
  const expected = expectedUnder(prior);
  const [best, value] = highest(expected);
  const withAll = states.reduce(
    (sum, state) =>
      sum + at(prior, state) * Math.max(...Object.values(payoff).map((values) => at(values, state))),
    0,
  );
  const looks = Object.entries(signals).flatMap(([signal, likelihood]) => {
    const probability = states.reduce((sum, state) => sum + at(prior, state) * at(likelihood, state), 0);
    if (!(probability > 0)) return [];
    const posterior = Object.fromEntries(
      states.map((state) => [state, (at(prior, state) * at(likelihood, state)) / probability]),
    );
    const [then, worth] = highest(expectedUnder(posterior));
    return [{ signal, probability, posterior, best: then, value: worth }];
  });
  const after = looks.reduce((sum, look) => sum + look.probability * look.value, 0);
  return {
    expected,
    best,
    value,
    perfectInformation: withAll - value,
    signals: looks,
    lookAdds: looks.length > 0 ? after - value : 0,
  };
}

function highest(expected: Readonly<Record<string, number>>): [string, number] {
  return Object.entries(expected).reduce((best, each) => (each[1] > best[1] ? each : best));
}
