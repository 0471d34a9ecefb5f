import { useId } from 'react';
import { capital, listed } from '../../ground/words.ts';
import { inSentence } from '../../knowledge/inSentence.ts';
import { outOf, probablyThat, toldShares } from '../../weighing/probabilityWords.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import { partName } from '../drawer/partName.ts';
import { YearCurve, yearCurveFoot } from '../plots/YearCurve.tsx';
import { weighingBinYears, yearScale, yearsWorthDrawing, yearTicks } from '../plots/yearAxis.ts';
import { type ReadingsContext, signName } from './readingsContext.ts';
import { spanWords, standsApart } from './yearSpans.ts';

type Years = Pick<Weighing['years'], 'p50' | 'p90' | 'density'>;
type Row = { id: string; name: string; years: Years; apart: string | undefined; looked: boolean };

const width = 640;

/** When the piece was made, and each part: one above the other on one axis, so that a part out of its time is seen. */
export function YearCurves({ context }: { context: ReadingsContext }) {
  const { weighing, knowledge } = context;
  const piece: Row = {
    id: 'piece',
    name: 'The piece',
    years: weighing.years,
    apart: undefined,
    looked: true,
  };
  const parts = weighing.parts.map(
    (part): Row => ({
      id: part.id,
      name: capital(part.name),
      years: part.years,
      apart: standsApart(weighing.years, part.years),
      looked: part.looked > 0,
    }),
  );
  const rows = [
    piece,
    ...parts.toSorted((a, b) => Number(b.apart !== undefined) - Number(a.apart !== undefined)),
  ];
  const told = rows.filter((row) => row.looked || row.apart !== undefined);
  const untold = rows.filter((row) => !told.includes(row));
  const apart = parts.filter((row) => row.apart !== undefined);
  const binding = weighing.years.binding;
  return (
    <section className="stack-tight">
      <h2>When it was made</h2>
      <p className="said">
        From the same odds and findings:{' '}
        {inSentence(probablyThat(toldShares.most, between(weighing.years.p90)))};{' '}
        {inSentence(probablyThat(toldShares.half, between(weighing.years.p50)))}.
      </p>
      {binding.length > 0 && (
        <p>
          {(['from', 'to'] as const)
            .map((end) => {
              const signs = binding
                .filter((each) => each.end === end)
                .map((each) => `“${signName(knowledge, each.sign)}” (${partName(context.parts, each.part)})`);
              return signs.length === 0
                ? ''
                : `${end === 'from' ? 'The early end' : 'The late end'} is held by ${listed(signs)}.`;
            })
            .join(' ')}
        </p>
      )}
      <p>
        {apart.length === 0
          ? 'No part stands out of the piece’s time.'
          : `${apart.map((row) => `${row.name} (${row.apart})`).join('; ')}.`}
      </p>
      <Curves rows={told} />
      {untold.length > 0 && (
        <details>
          <summary>Parts not looked at ({untold.length}): they go by the piece</summary>
          <Curves rows={untold} />
        </details>
      )}
      <details>
        <summary>Years as a table</summary>
        <div className="read-scroll">
          <table className="read-table">
            <caption>Shortest spans that hold so much of the probability</caption>
            <thead>
              <tr>
                <th scope="col">Part</th>
                <th scope="col">{outOf(toldShares.half)}</th>
                <th scope="col">{outOf(toldShares.most)}</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={row.id}>
                  <th scope="row">
                    {row.name}
                    {row.apart === undefined ? '' : ` (${row.apart})`}
                  </th>
                  <td>{spanWords(row.years.p50)}</td>
                  <td>{spanWords(row.years.p90)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </section>
  );
}

function between([from, to]: readonly [number, number]): string {
  return `between ${Math.round(from)} and ${Math.round(to)}`;
}

/** The curves themselves, each to its own height, on one axis of years. */
function Curves({ rows }: { rows: readonly Row[] }) {
  const id = useId();
  const span = yearsWorthDrawing(
    rows.map((row) => row.years),
    weighingBinYears,
  );
  const across = yearScale(span, width);
  const ticks = yearTicks(span, 7);
  return (
    <div className="read-curves" role="img" aria-label={sayCurves(rows)}>
      {rows.map((row) => (
        <div
          key={row.id}
          className="read-curve"
          data-apart={row.apart === undefined ? undefined : ''}
          data-piece={row.id === 'piece' ? '' : undefined}
        >
          <span className="read-curve-name">
            {row.name} <span className="soft">{row.apart ?? ''}</span>
          </span>
          <Curve years={row.years} height={row.id === 'piece' ? 84 : 30} {...{ across, ticks }} />
        </div>
      ))}
      <div className="read-curve" id={`${id}-axis`}>
        <span />
        <span className="read-axis">
          {ticks.map((year) => (
            <span key={year} style={{ left: `${(across(year) / width) * 100}%` }}>
              {year}
            </span>
          ))}
        </span>
      </div>
    </div>
  );
}

type CurveProps = Pick<Parameters<typeof YearCurve>[0], 'across' | 'ticks' | 'height'> & { years: Years };

function Curve({ years, ...axis }: CurveProps) {
  const height = axis.height + yearCurveFoot;
  return (
    <svg
      className="read-curve-svg"
      viewBox={`0 0 ${width} ${height}`}
      preserveAspectRatio="none"
      style={{ height }}
      aria-hidden="true"
      focusable="false"
    >
      <YearCurve
        density={years.density}
        binYears={weighingBinYears}
        half={years.p50}
        most={years.p90}
        {...axis}
      />
    </svg>
  );
}

function sayCurves(rows: readonly Row[]): string {
  const each = rows.map(
    (row) => `${row.name}: ${spanWords(row.years.p90)}${row.apart === undefined ? '' : `, ${row.apart}`}`,
  );
  return `Curves of years, with the spans that hold ${outOf(toldShares.most)}: ${each.join('; ')}. The same as a table below.`;
}
