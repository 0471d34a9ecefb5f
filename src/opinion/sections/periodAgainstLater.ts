import { ratioToOne, scaleBand, weightWords } from '../../weighing/verbalScale.ts';
import type { Block, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { decibanWords } from '../wording.ts';

const sides = ['a period piece', 'a later piece'] as const;

/** The one question apart: whether the piece is of the period or later, whatever reading leads; one put together stands on no side. */
export function periodAgainstLaterSection(material: OpinionMaterial): Section | undefined {
  const { weighing, signName, partName } = material;
  if (weighing === undefined || weighing.weights.length === 0) return undefined;
  const total = weighing.altogether.periodAgainstLater;
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
          'The same findings, weighed for one question alone: whether the piece is of the period, whatever was repaired or altered on it later, or a later piece, be it a copy by hand, a copy by machine, or made to pass as older. A piece put together from old parts is neither as it stands: it is left out of both sides. + is for a period piece, − for a later piece. How much a finding weighs against a later piece hangs on the mix of copies and pieces made to pass as older that was to be expected: it is no single figure for “later”.',
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
      {
        kind: 'paragraph',
        words:
          total === null
            ? 'Taken together the findings leave one side nothing, so there is no number.'
            : [
                'Taken together the findings give ',
                { strong: weightWords(total, ...sides) },
                `: about ${Math.abs(Math.round(total))} decibans, a likelihood ratio of ${ratioToOne(total)}.`,
              ],
      },
      ...(weighing.observations.length === 0
        ? []
        : [
            {
              kind: 'paragraph',
              as: 'note',
              words:
                'The findings of signs alone: what is the examiner’s own is not in this table, and stands under “What speaks for and against”.',
            } satisfies Block,
          ]),
    ],
  };
}

function size({ periodAgainstLater: { alone } }: { periodAgainstLater: { alone: number | null } }): number {
  return Math.abs(alone ?? Number.POSITIVE_INFINITY);
}
