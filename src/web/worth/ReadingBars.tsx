import { scaleLinear } from 'd3-scale';
import { readingId, readingWords } from '../../piece/readings.ts';
import { formatDollars } from '../../units/money.ts';
import { outOf } from '../../weighing/probabilityWords.ts';
import { FigureTable } from '../plots/FigureTable.tsx';

type Props = { readings: readonly { id: string; probability: number; low: number; high: number }[] };

const width = 640;
const row = 40;

/** Each reading’s range of worth, the thicker the more probable it is. */
export function ReadingBars({ readings }: Props) {
  const most = Math.max(1, ...readings.map(({ high }) => high));
  const across = scaleLinear([0, most], [0, width]);
  const height = readings.length * row;
  const thick = (probability: number) => Math.max(2, probability * (row - 18));
  return (
    <figure className="plot plot-wide">
      <svg
        viewBox={`-6 0 ${width + 12} ${height + 24}`}
        role="img"
        aria-label={`Ranges of worth by reading, from ${formatDollars(0)} to ${formatDollars(most)}; the same as a table below.`}
      >
        {across.ticks(4).map((sum) => (
          <g key={sum}>
            <line className="plot-grid" x1={across(sum)} x2={across(sum)} y1={0} y2={height} />
            <text
              x={across(sum)}
              y={height + 16}
              textAnchor={sum === 0 ? 'start' : across(sum) > width * 0.95 ? 'end' : 'middle'}
            >
              {formatDollars(sum)}
            </text>
          </g>
        ))}
        {readings.map(({ id, probability, low, high }, index) => (
          <g key={id}>
            <rect
              className="plot-bar"
              x={across(low)}
              width={Math.max(3, across(high) - across(low))}
              y={index * row + 15 + (row - 18 - thick(probability)) / 2}
              height={thick(probability)}
            />
            <text
              x={across(low) > width * 0.6 ? Math.min(width, across(high)) : across(low)}
              y={index * row + 12}
              textAnchor={across(low) > width * 0.6 ? 'end' : 'start'}
            >
              {nameOf(id)}
            </text>
          </g>
        ))}
      </svg>
      <figcaption className="small soft">The thicker, the more probable.</figcaption>
      <FigureTable
        caption="Ranges of worth by reading"
        heads={['Reading', 'How probable', 'From', 'To']}
        rows={readings.map(({ id, probability, low, high }) => [
          nameOf(id),
          outOf(probability),
          formatDollars(low),
          formatDollars(high),
        ])}
      />
    </figure>
  );
}

function nameOf(id: string): string {
  const read = readingId.safeParse(id);
  return read.success ? readingWords[read.data].title : id;
}
