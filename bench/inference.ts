/**
 * How fast exact inference is, beside adding up every state of affairs and beside a library of the same kind.
 *
 *   npx tsx bench/inference.ts [--peer FOLDER]
 *
 * FOLDER is one in which `npm install bayesjs@0.6.5` was run; without it the library's column stays empty.
 * Networks are drawn with a fixed seed. Figures are medians; what was measured once stands in docs/bench.md.
 */
import { cpus } from 'node:os';
import { compileNetwork } from '../src/inference/compileNetwork.ts';
import type { Network } from '../src/inference/network.ts';
import { planElimination } from '../src/inference/plan.ts';
import { posterior } from '../src/inference/posterior.ts';
import { propagate } from '../src/inference/propagate.ts';
import { indexEvidence, requestFor } from '../src/inference/question.ts';
import { bruteForce } from '../test/kits/bruteForce.ts';
import published from '../test/reference/bayes.json' with { type: 'json' };
import { partsNetwork, randomNetwork } from './networks.ts';
import { loadPeer, type Shares } from './peer.ts';

type Case = { name: string; network: Network; hard: Record<string, string>; brute: boolean; peer: boolean };

const random = randomNetwork(12, 3, 20261125);
const parts = partsNetwork(10, 6, 86, 20261125);
const fewParts = partsNetwork(3, 4, 12, 20261125);
const cases: Case[] = [
  {
    name: 'Asia, 8 unknowns, 2 observed',
    network: published.networks.asia as Network,
    hard: { asia: 'yes', dysp: 'yes' },
    brute: true,
    peer: true,
  },
  {
    name: 'random, 12 unknowns of 3 states, 2 observed',
    network: random,
    hard: { v10: 's0', v11: 's1' },
    brute: true,
    peer: true,
  },
  {
    name: '3 parts, 12 findings, 12 year bins',
    network: fewParts,
    hard: allSeen(fewParts),
    brute: false,
    peer: true,
  },
  {
    name: '10 parts, 60 findings, 86 year bins',
    network: parts,
    hard: allSeen(parts),
    brute: false,
    peer: false,
  },
];

const peer = loadPeer(process.argv);
console.log(
  `Node ${process.version}, ${cpus().length} cores; medians in ms; all posteriors of each network\n`,
);
console.log(
  '| network | from the network | laid out before | every state | bayesjs 0.6.5 | furthest apart |',
);
console.log('|---|---|---|---|---|---|');
for (const each of cases) console.log(row(each));

function row({ name, network, hard, brute, peer: tryPeer }: Case): string {
  const ours = () => answer(network, hard);
  const compiled = compileNetwork(network);
  const evidence = indexEvidence(compiled, { hard });
  const open = [...compiled.ids.keys()].filter((each) => !evidence.hard.has(each));
  const plan = planElimination(compiled, requestFor(evidence, open));
  const again = () => {
    const result = propagate(plan, evidence);
    if (!result.possible) throw new Error('held impossible');
    for (const variable of open) result.marginal(variable);
  };
  const others: Shares[] = [];
  const column = (run: (() => Shares) | undefined) => {
    if (!run) return '–';
    others.push(run());
    return median(run);
  };
  const bruteTime = column(brute ? () => bruteForce(network, { hard }).shares : undefined);
  const peerTime = column(tryPeer ? peer?.(network, hard) : undefined);
  const apart =
    others.length === 0 ? '–' : others.map((other) => furthest(ours(), other).toExponential(0)).join(', ');
  return `| ${name} | ${median(ours)} | ${median(again)} | ${bruteTime} | ${peerTime} | ${apart} |`;
}

function answer(network: Network, hard: Record<string, string>): Shares {
  const result = posterior(network, { hard });
  if (!result.ok || !result.possible) throw new Error('no posterior');
  return result.posteriors;
}

/** Median of up to 51 runs, or of as many as fit in two seconds, after one to warm up. */
function median(run: () => unknown): string {
  run();
  const times: number[] = [];
  const began = performance.now();
  while (times.length < 51 && (times.length < 3 || performance.now() - began < 2000)) {
    const before = performance.now();
    run();
    times.push(performance.now() - before);
  }
  times.sort((a, b) => a - b);
  return Number((times[Math.floor(times.length / 2)] as number).toPrecision(2)).toString();
}

function furthest(a: Shares, b: Shares): number {
  const apart = Object.entries(a).flatMap(([id, states]) =>
    Object.entries(states).map(([state, share]) => Math.abs(share - (b[id]?.[state] ?? Number.NaN))),
  );
  return Math.max(...apart);
}

function allSeen(network: Network): Record<string, string> {
  return Object.fromEntries(
    network.variables.filter(({ id }) => id.includes('finding')).map(({ id }) => [id, 'present']),
  );
}
