import { scaleLinear } from 'd3-scale';
import { linePath } from '../../plots/linePath.ts';

/** The grain of both sides where they would meet: lines that rise and fall together are one piece’s. */
export function ProfilesFigure({ a, b }: { a: readonly number[]; b: readonly number[] }) {
  const most = Math.max(0.001, ...a.map(Math.abs), ...b.map(Math.abs));
  const up = scaleLinear([-most, most], [114, 6]);
  const line = (values: readonly number[]) => {
    const across = scaleLinear([0, Math.max(1, values.length - 1)], [0, 400]);
    return linePath(values.map((value, index) => [across(index), up(value)]));
  };
  return (
    <svg
      className="photo-figure"
      viewBox="0 0 400 146"
      role="img"
      aria-label="Lightness across the part, of one side as a whole line and of the other as a broken one, both carried to the middle of the band."
    >
      <path className="photo-first" d={line(a)} />
      <path className="photo-second" d={line(b)} />
      <path className="photo-first" d="M4 134H34" />
      <text x="40" y="139" fontSize="13">
        one side
      </text>
      <path className="photo-second" d="M124 134H154" />
      <text x="160" y="139" fontSize="13">
        the other side
      </text>
    </svg>
  );
}
