import { scaleLinear } from 'd3-scale';
import { formatInches } from '../../../units/length.ts';
import '../../plots/plots.css';
import type { Likeness } from './likenessWords.ts';

type Member = { id: string; kind: string; measures: Record<string, number> };
type Props = { members: readonly Member[]; columns: readonly string[]; outliers: Likeness['outliers'] };

const width = 480;
const row = 64;

/** Each measure as a line with a mark for each member: round for side chairs, square and filled for armchairs, ringed and named where it stands out. */
export function DotsFigure({ members, columns, outliers }: Props) {
  const measures = columns.filter(
    (column) => members.filter(({ measures }) => measures[column] !== undefined).length > 1,
  );
  if (measures.length === 0) return null;
  return (
    <figure className="plot sets-dots">
      <svg
        viewBox={`-8 0 ${width + 16} ${measures.length * row + 4}`}
        role="img"
        aria-label={`Every member on a line for each measure. ${outliers.length === 0 ? 'None stands out.' : `Standing out: ${outliers.map(({ id, measure }) => `${id} in ${measure}`).join(', ')}.`} The spreads stand in the table below.`}
      >
        {measures.map((measure, index) => (
          <g key={measure} transform={`translate(0 ${index * row})`}>
            <Line measure={measure} members={members} outliers={outliers} />
          </g>
        ))}
      </svg>
      <figcaption className="small soft">
        Round: side chairs and others · square and filled: armchairs · ringed: stands out
      </figcaption>
    </figure>
  );
}

function Line({ measure, members, outliers }: { measure: string } & Omit<Props, 'columns'>) {
  const having = members.flatMap(({ id, kind, measures }) =>
    measures[measure] === undefined ? [] : [{ id, kind, mm: measures[measure] }],
  );
  const values = having.map(({ mm }) => mm);
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const span = Math.max(most - least, 12);
  const middle = (least + most) / 2;
  const across = scaleLinear([middle - span / 2, middle + span / 2], [10, width - 10]);
  const isOut = (id: string) => outliers.some((each) => each.id === id && each.measure === measure);
  return (
    <>
      <text x={0} y={12}>
        {measure}
      </text>
      <line className="plot-axis" x1={0} x2={width} y1={36} y2={36} />
      <text x={across(least)} y={55} textAnchor="start" dx={-8}>
        {formatInches(least)} in
      </text>
      {most > least && (
        <text x={across(most)} y={55} textAnchor="end" dx={8}>
          {formatInches(most)} in
        </text>
      )}
      {having.map(({ id, kind, mm }) => (
        <g key={id}>
          {/arm|elbow/i.test(kind) ? (
            <rect className="sets-dot armed" x={across(mm) - 5} y={31} width={10} height={10} />
          ) : (
            <circle className="sets-dot" cx={across(mm)} cy={36} r={5} />
          )}
          {isOut(id) && (
            <>
              <circle className="sets-out" cx={across(mm)} cy={36} r={9} />
              <text x={across(mm)} y={24} textAnchor="middle">
                {id}
              </text>
            </>
          )}
        </g>
      ))}
    </>
  );
}
