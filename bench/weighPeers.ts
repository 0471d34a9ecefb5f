import type { CaseToWeigh } from '../src/evidence/caseToWeigh.ts';
import { bestDraw } from '../src/evidence/figures.ts';
import { prepareCase } from '../src/evidence/prepareCase.ts';
import { smallKnowledge } from '../src/evidence/testing/smallKnowledge.ts';
import { yearAxis } from '../src/evidence/yearAxis.ts';
import { posterior } from '../src/inference/posterior.ts';
import type { Knowledge } from '../src/knowledge/schema.ts';
import { evaluate } from '../src/summation/evaluate.ts';
import { layOut } from '../src/summation/makeLayout.ts';
import { fixModel } from '../src/summation/model.ts';
import { shares } from '../src/summation/readingPosterior.ts';
import { explicitNetwork } from '../src/summation/testing/explicitNetwork.ts';
import { drawnCase } from './drawnCase.ts';
import type { Peer } from './peer.ts';
import { type Row, timed } from './weighTimes.ts';

/** What one way of summing took, and how far its readings are from ours. */
export type PeerRow = Row & { furthestApart: number };

/**
 * Our summation beside general exact inference over the same model written out as an ordinary network, on cases that the
 * latter can carry: a made-up bench of four parts, and an armchair on a coarse axis without shops.
 *
 * @param peer  a library from the registries, tried on the smallest case alone
 */
export function weighPeers(
  knowledge: Knowledge,
  peer: Peer | undefined,
  now: () => number,
): { title: string; rows: PeerRow[] }[] {
  const small = smallKnowledge();
  return [
    {
      title:
        'A made-up bench cut down to what the library carries: 2 parts, 1 alteration, no shops, 4 year bins',
      rows: beside(cutDown(small), cutDownCase(cutDown(small)), 80, peer, now),
    },
    {
      title: 'A made-up bench: 4 parts, 8 findings, 2 shops, 4 year bins',
      rows: beside(small, drawnCase(small, { form: 'bench', findings: 8, seed: 7 }), 80, undefined, now),
    },
    {
      title: 'Armchair, 12 findings, no shops, 6 year bins',
      rows: beside(knowledge, armchair(knowledge), 55, undefined, now),
    },
  ];
}

function cutDown(knowledge: Knowledge): Knowledge {
  const bench = knowledge.forms.bench;
  if (bench === undefined) throw new Error('the made-up knowledge has no bench');
  const parts = bench.parts.filter((part) => part.id === 'rail' || part.id === 'leg-left');
  return { ...knowledge, forms: { bench: { ...bench, parts, alterations: ['legs-replaced'] } } };
}

function cutDownCase(knowledge: Knowledge): CaseToWeigh {
  return { ...drawnCase(knowledge, { form: 'bench', findings: 8, seed: 7 }), shops: [] };
}

function armchair(knowledge: Knowledge): CaseToWeigh {
  const claim = { period: [1755, 1795] as [number, number], place: 'Philadelphia' };
  return { ...drawnCase(knowledge, { form: 'armchair', findings: 12, seed: 7, claim }), shops: [] };
}

function beside(
  knowledge: Knowledge,
  input: CaseToWeigh,
  stepYears: number,
  peer: Peer | undefined,
  now: () => number,
): PeerRow[] {
  const ready = prepareCase(input, knowledge, 2019, yearAxis(1700, 2019, stepYears));
  if (!ready.ok) throw new Error('a case of the benchmark was refused');
  const layout = layOut(ready.prepared, true);
  const network = explicitNetwork(fixModel(layout, bestDraw()));
  const ours = shares(evaluate(fixModel(layout, bestDraw())).posterior);
  const apart = (theirs: Record<string, number> | undefined) =>
    Math.max(...Object.entries(ours).map(([id, share]) => Math.abs(share - (theirs?.[id] ?? Number.NaN))));
  const general = () => {
    const result = posterior(network, { hard: network.evidence }, ['reading']);
    if (!result.ok || !result.possible) throw new Error('general elimination gave no answer');
    return result.posteriors.reading;
  };
  const rows: PeerRow[] = [
    {
      ...timed('this summation', 31, now, () => void evaluate(fixModel(layout, bestDraw()))),
      furthestApart: 0,
    },
    { ...timed('our general elimination', 3, now, () => void general()), furthestApart: apart(general()) },
  ];
  if (peer !== undefined) {
    const run = peer(network, network.evidence);
    rows.push({ ...timed('bayesjs 0.6.5', 1, now, () => void run()), furthestApart: apart(run().reading) });
  }
  return rows;
}
