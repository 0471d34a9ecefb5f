import { useId } from 'react';
import type { Drawing } from '../../drawing/drawForm.ts';
import { isHatched, isPale, type Standing } from '../../drawing/hatching.ts';
import { standingInWords } from '../../drawing/standingInWords.ts';
import { capital } from '../../ground/words.ts';
import { Hatches, hatchId } from './Hatches.tsx';

export type View = Drawing['views'][number];

type Props = {
  view: View;
  names: Record<string, string>;
  standing?: Record<string, Standing>;
  /** How many findings each part has; printed where there are any. */
  counts?: Record<string, number>;
  missing?: readonly string[];
  selected?: string | undefined;
  /** Called when a part is touched. Whoever uses this puts a list of buttons beside it for the keyboard. */
  onTouch?: (part: string) => void;
};

/** One view of the piece in lines, hatched by the standing of its parts; a part is touched to open it. */
export function PieceDrawing({
  view,
  names,
  standing = {},
  counts = {},
  missing = [],
  selected,
  onTouch,
}: Props) {
  const id = useId();
  const [x, y, width, height] = view.box;
  const size = Math.max(width, height);
  return (
    <svg
      className="exam-drawing"
      data-touch={onTouch === undefined ? undefined : ''}
      viewBox={`${x} ${y} ${width} ${height}`}
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>{view.name}</title>
      <desc id={`${id}-desc`}>{describe(view, names, standing)}</desc>
      <Hatches drawing={id} gap={size / 60} />
      {view.shapes.map((shape, index) => {
        const state = standing[shape.part];
        return (
          // biome-ignore lint/a11y/noStaticElementInteractions: the same
          <g
            // biome-ignore lint/suspicious/noArrayIndexKey: a part can have several shapes, always in this order
            key={`${shape.part}-${index}`}
            className="exam-shape"
            data-part={shape.part}
            data-selected={shape.part === selected ? '' : undefined}
            data-pale={isPale(state) ? '' : undefined}
            data-missing={missing.includes(shape.part) ? '' : undefined}
            onClick={onTouch === undefined ? undefined : () => onTouch(shape.part)}
          >
            <path className="exam-shape-reach" d={shape.d} />
            <path className="exam-shape-body" d={shape.d} />
            {state !== undefined && isHatched(state) && (
              <path
                className="exam-shape-hatch"
                d={shape.d}
                style={{ fill: `url(#${hatchId(id, state)})` }}
              />
            )}
            <path className="exam-shape-line" d={shape.d} />
          </g>
        );
      })}
      {countedShapes(view, counts).map(({ part, label, count }) => (
        <g key={part} className="exam-count">
          <circle cx={label[0]} cy={label[1]} r={size / 62} />
          <text x={label[0]} y={label[1]} fontSize={size / 42} dy="0.36em">
            {count}
          </text>
        </g>
      ))}
    </svg>
  );
}

/** A drawing in words: which parts it shows, and how each of them stands. */
function describe(view: View, names: Record<string, string>, standing: Record<string, Standing>): string {
  const parts = [...new Set(view.shapes.map((shape) => shape.part))];
  const all = `Shows ${parts.map((part) => names[part] ?? part).join(', ')}.`;
  const told = standingInWords(parts, names, standing);
  return told === '' ? all : `${all} ${capital(told)}.`;
}

function countedShapes(view: View, counts: Record<string, number>) {
  const seen = new Set<string>();
  return view.shapes.flatMap(({ part, label }) => {
    const count = counts[part] ?? 0;
    if (count === 0 || seen.has(part)) return [];
    seen.add(part);
    return [{ part, label, count }];
  });
}
