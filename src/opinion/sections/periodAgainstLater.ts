import { scaleBand, weightWords } from '../../evidence/verbalScale.ts';
import type { Block, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { totalWeight } from '../totalWeight.ts';
import { decibanWords } from '../wording.ts';

const sides = ['a period piece', 'a later piece'] as const;

/** The one question apart: whether the main body is of the period at all, whatever reading leads. */
export function periodAgainstLaterSection(material: OpinionMaterial): Section | undefined {
  const { weighing, knowledge, piece, signName, partName } = material;
  if (weighing === undefined || weighing.weights.length === 0) return undefined;
  const total = totalWeight(weighing, knowledge.making, piece.startingOdds);
  const rows = weighing.weights
    .toSorted((a, b) => size(b) - size(a))
    .map(({ sign, part, state, periodAgainstLater: { alone, withinWhole } }): Words[] => [
      [signName(sign), state === 'absent' ? { em: ', absent' } : '', ` – ${partName(part)}`],
      alone === null ? 'a limit leaves one side nothing' : scaleBand(alone).words,
      alone === null ? '' : decibanWords(alone),
      withinWhole === null ? '' : decibanWords(withinWhole),
    ]);
  return {
    id: 'period-against-later',
    title: 'Of the period, or later',
    appendix: true,
    blocks: [
      {
        kind: 'paragraph',
        words:
          'The same findings, weighed for one question alone: whether the main body is of the period, whatever was done to it later, or a later piece, be it a copy by hand, a copy by machine, or made to pass as older. + is for a period piece, − for a later piece. What a finding weighs against a later piece hangs on how many copies of each kind were to be expected.',
      },
      {
        kind: 'table',
        caption: 'Of the period, or later',
        columns: [
          { name: 'Finding', share: 5.6 },
          { name: 'By itself, in words', share: 2.8 },
          { name: 'By itself, decibans', share: 1.5, end: true },
          { name: 'Within the whole', share: 1.5, end: true },
        ],
        groups: [{ rows }],
      },
      ...(total === undefined
        ? []
        : [
            {
              kind: 'paragraph',
              words: [
                `Taken together the findings give ${total.atLeast ? 'at least ' : ''}`,
                { strong: weightWords(total.decibans, ...sides) },
                total.atLeast
                  ? `: ${Math.floor(Math.abs(total.decibans))} decibans or more. The weight is given as a bound because no probability is printed beyond 999 in 1000.`
                  : `: about ${Math.abs(Math.round(total.decibans))} decibans.`,
              ],
            } satisfies Block,
          ]),
    ],
  };
}

function size({ periodAgainstLater: { alone } }: { periodAgainstLater: { alone: number | null } }): number {
  return Math.abs(alone ?? Number.POSITIVE_INFINITY);
}
