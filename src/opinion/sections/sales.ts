import { type OutputOf, runCalculation } from '../../calculations/runCalculation.ts';
import { worthComparables } from '../../calculations/worthComparables.ts';
import { formatDollars, formatMoney } from '../../units/money.ts';
import { comparablesOf } from '../../worth/comparablesOf.ts';
import type { Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';

/** What the sales say together, as of the effective date; undefined where none can be reckoned with. */
export function salesFound({ piece, knowledge, madeOn }: OpinionMaterial): SalesFound | undefined {
  const { asked } = comparablesOf(piece);
  if (asked.length === 0) return undefined;
  const input = {
    subject: piece.title,
    comparables: asked.map(({ comparable }) => comparable),
    asOf: piece.engagement.effectiveOn ?? madeOn,
    basis: piece.worth.basis,
  };
  const found = runCalculation(worthComparables, input, { knowledge, yearNow: Number(madeOn.slice(0, 4)) });
  return found.ok ? found.output : undefined;
}

/** What `worth.comparables` found of the sales of a piece. */
export type SalesFound = OutputOf<typeof worthComparables>;

/** Every sale that was compared, with its price, its adjustments and their reasons; nothing where there is none. */
export function salesSection(material: OpinionMaterial, found: SalesFound | undefined): Section | undefined {
  if (found === undefined) return undefined;
  const { asked } = comparablesOf(material.piece);
  return {
    id: 'sales',
    title: 'Sales compared',
    appendix: true,
    blocks: [
      {
        kind: 'table',
        caption: `Each sale brought to this piece, ${material.piece.worth.basis === 'hammer' ? 'at the hammer' : 'with the buyer’s premium'}`,
        columns: [
          { name: 'Sale', share: 4 },
          { name: 'Price', share: 2, end: true },
          { name: 'Adjustments', share: 5 },
          { name: 'Adjusted', share: 2, end: true },
          { name: 'Share', share: 1, end: true },
        ],
        groups: [
          {
            rows: found.grid.map((each, index): Words[] => {
              const sale = material.piece.comparables[asked[index]?.id ?? ''];
              return [
                [each.name, sale?.date ?? '', sale?.where.trim() ?? '']
                  .filter((word) => word !== '')
                  .join(', '),
                each.onBasis === each.price
                  ? formatMoney(each.price * 100)
                  : `${formatMoney(each.price * 100)}, so ${formatDollars(each.onBasis)}`,
                [...each.saleSteps, ...each.pieceSteps]
                  .map(
                    ({ why, adjustment }) =>
                      `${why}: ${adjustment > 0 ? '+' : ''}${formatDollars(adjustment)}`,
                  )
                  .join('; ') || 'none',
                formatDollars(each.adjusted),
                `${Math.round(each.weight * 100)} %`,
              ];
            }),
          },
        ],
      },
      {
        kind: 'paragraph',
        as: 'note',
        words: [
          'Adjustments of the sale follow one another; those of the piece are all taken on the price after them. The result is the mean by share; its range comes from drawing as many sales again by their shares, and knows of the scatter among them only.',
          ...found.remarks,
        ].join(' '),
      },
    ],
  };
}
