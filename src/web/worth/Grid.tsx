import { Fragment, type ReactNode } from 'react';
import type { OutputOf } from '../../calculations/runCalculation.ts';
import type { worthComparables } from '../../calculations/worthComparables.ts';
import { formatDollars, formatMoney } from '../../units/money.ts';
import { outOf, toldShares } from '../../weighing/probabilityWords.ts';

type Props = { found: OutputOf<typeof worthComparables>; basis: 'hammer' | 'with-premium' };

/** The sales beside one another: price, each step with its reason, and where each comes out. */
export function Grid({ found, basis }: Props) {
  return (
    <div className="sheet stack-tight">
      <p className="said" role="status">
        Together the sales say {formatDollars(found.point)}
        {found.low === null || found.high === null
          ? '; one sale shows no range'
          : `, ${formatDollars(found.low)} to ${formatDollars(found.high)} by their own scatter (${outOf(toldShares.most)})`}
        . {basis === 'hammer' ? 'At the hammer.' : 'With the buyer’s premium.'}
      </p>
      {found.remarks.map((each) => (
        <p key={each} className="small doubt">
          {each}
        </p>
      ))}
      <div className="worth-scroll">
        <table className="plot-table worth-grid">
          <caption className="unseen">Adjustment grid</caption>
          <thead>
            <tr>
              <th scope="col">Step</th>
              {found.grid.map(({ name }, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: two sales may have one name
                <th key={index} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <Row name="Price" grid={found.grid} of={({ price }) => formatMoney(price * 100)} />
            <Row name="On the basis wanted" grid={found.grid} of={({ onBasis }) => formatDollars(onBasis)} />
            <Row name="Sale" grid={found.grid} of={({ saleSteps }) => <Steps steps={saleSteps} />} />
            <Row name="After the sale" grid={found.grid} of={({ afterSale }) => formatDollars(afterSale)} />
            <Row name="Piece" grid={found.grid} of={({ pieceSteps }) => <Steps steps={pieceSteps} />} />
            <Row
              name="Adjusted"
              grid={found.grid}
              of={({ adjusted }) => <strong>{formatDollars(adjusted)}</strong>}
            />
            <Row
              name="All adjustments, signs left off"
              grid={found.grid}
              of={({ grossPercent }) => `${Math.round(grossPercent)} %`}
            />
            <Row
              name="Share of the result"
              grid={found.grid}
              of={({ weight }) => `${Math.round(weight * 100)} %`}
            />
            <Row name="Years before" grid={found.grid} of={({ yearsBefore }) => yearsBefore.toFixed(1)} />
          </tbody>
        </table>
      </div>
    </div>
  );
}

type Sale = Props['found']['grid'][number];

function Row({ name, grid, of }: { name: string; grid: readonly Sale[]; of: (sale: Sale) => ReactNode }) {
  return (
    <tr>
      <th scope="row">{name}</th>
      {grid.map((sale, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a cell is known by its column
        <td key={index}>{of(sale)}</td>
      ))}
    </tr>
  );
}

function Steps({ steps }: { steps: readonly { why: string; adjustment: number }[] }) {
  if (steps.length === 0) return '–';
  return steps.map(({ why, adjustment }, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: a step is known by its place
    <Fragment key={index}>
      {index > 0 ? <br /> : null}
      {why}: {adjustment > 0 ? '+' : ''}
      {formatDollars(adjustment)}
    </Fragment>
  ));
}
