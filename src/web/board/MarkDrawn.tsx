import type { Point } from '../../photo/picture.ts';
import type { BoardMark } from './boardMark.ts';

type Props = {
  mark: Pick<BoardMark, 'kind'> & { points: readonly Point[] };
  /** Its number, as in the list. */
  number: number;
  chosen: boolean;
  /** Being set: drawn broken. */
  sketched?: boolean;
};

/** A mark as it lies in the frame; its points are screen pixels. Light under dark, so that it shows on any picture. */
export function MarkDrawn({ mark, number, chosen, sketched = false }: Props) {
  const d = pathOf(mark);
  const [first] = mark.points;
  if (first === undefined) return null;
  const many = mark.points.length > 40;
  return (
    <g className="photo-mark" data-chosen={chosen ? '' : undefined}>
      <path className="photo-halo" d={d} strokeWidth="4.5" />
      <path className="photo-line" d={d} strokeWidth="2" strokeDasharray={sketched ? '7' : undefined} />
      {(!many || chosen) &&
        mark.points
          .filter((_, index) => !many || index % Math.ceil(mark.points.length / 40) === 0)
          .map(([x, y], index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: points have no other name than their order
            <g key={index}>
              <circle className="photo-halo" cx={x} cy={y} r="5" strokeWidth="4" />
              <circle className="photo-line" cx={x} cy={y} r="5" strokeWidth="2" />
            </g>
          ))}
      <g
        className="photo-badge"
        transform={`translate(${Math.max(13, first[0] + 14)} ${Math.max(13, first[1] - 14)})`}
      >
        <circle r="10" />
        <text dy="0.36em">{number}</text>
      </g>
    </g>
  );
}

function pathOf({ kind, points }: Props['mark']): string {
  const at = ([x, y]: Point) => `${x.toFixed(2)} ${y.toFixed(2)}`;
  if (kind === 'points' || kind === 'point') return '';
  if (kind === 'angle')
    return [points.slice(0, 2), points.slice(2)]
      .filter((line) => line.length === 2)
      .map(([a, b]) => `M${at(a as Point)}L${at(b as Point)}`)
      .join('');
  if (kind === 'region') {
    const [a, b] = points;
    return a === undefined || b === undefined ? '' : `M${at(a)}H${b[0]}V${b[1]}H${a[0]}Z`;
  }
  const line = points.map((point, index) => `${index === 0 ? 'M' : 'L'}${at(point)}`).join('');
  return kind === 'polygon' || (kind === 'corners' && points.length === 4) ? `${line}Z` : line;
}
