import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import type { Network } from '../src/inference/network.ts';

export type Shares = Record<string, Record<string, number>>;

/** Readies the library for a network and what is observed; what comes back gives the posteriors anew at each call. */
export type Peer = (network: Network, hard: Record<string, string>) => () => Shares;

/**
 * The library bayesjs 0.6.5 in its own shapes; its cache is switched off so that each run reckons.
 *
 * @param args  the arguments of the command line: `--peer FOLDER` names a folder in which it was installed
 * @returns undefined where no such folder is named
 */
export function loadPeer(args: readonly string[]): Peer | undefined {
  const at = args.indexOf('--peer');
  const folder = at < 0 ? undefined : args[at + 1];
  if (folder === undefined || !existsSync(join(resolve(folder), 'node_modules', 'bayesjs'))) return undefined;
  const { inferAll } = createRequire(join(resolve(folder), 'package.json'))('bayesjs');
  return (network, hard) => {
    const statesOf = new Map(network.variables.map(({ id, states }) => [id, states]));
    const nodes = network.tables.map(({ variable, given, rows }) => {
      const states = statesOf.get(variable) as readonly string[];
      const then = (line: readonly number[]) =>
        Object.fromEntries(states.map((state, index) => [state, line[index]]));
      const cpt =
        given.length === 0
          ? then(rows[0] as number[])
          : rows.map((line, index) => ({
              when: whenOf(given, index, statesOf),
              ['then' as const]: then(line),
            }));
      return [variable, { id: variable, states, parents: given, cpt }];
    });
    const theirs = Object.fromEntries(nodes);
    return () => inferAll(theirs, hard, { force: true, precision: 12 });
  };
}

function whenOf(
  given: readonly string[],
  row: number,
  statesOf: ReadonlyMap<string, readonly string[]>,
): Record<string, string> {
  let rest = row;
  const when: Record<string, string> = {};
  for (const id of given.toReversed()) {
    const states = statesOf.get(id) as readonly string[];
    when[id] = states[rest % states.length] as string;
    rest = Math.floor(rest / states.length);
  }
  return when;
}
