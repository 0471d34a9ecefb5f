import { useId } from 'react';
import type { View } from '../../examination/PieceDrawing.tsx';
import { heatOf } from './heatOf.ts';
import { oftenLevel, oftenWords, type WearSurface } from './wearWords.ts';

type Props = {
  view: View;
  surfaces: readonly WearSurface[];
  isSeating: boolean;
  nameOf: (part: string) => string;
  chosen: string | undefined;
  onTouch: (part: string) => void;
};

/** A view of the piece with where use touches it: darker where more, and a figure for how often. A list of buttons beside it serves the keyboard. */
export function HeatDrawing({ view, surfaces, isSeating, nameOf, chosen, onTouch }: Props) {
  const id = useId();
  const [x, y, width, height] = view.box;
  const size = Math.max(width, height);
  const of = (part: string) => surfaces.filter((surface) => surface.part === part);
  const levels = new Map(
    surfaces.map(({ part }) => [part, oftenLevel(Math.max(...of(part).map(({ per100Uses }) => per100Uses)))]),
  );
  const labelled = new Set<string>();
  const labels = view.shapes.flatMap(({ part, label }) => {
    const level = levels.get(part);
    if (level === undefined || labelled.has(part)) return [];
    labelled.add(part);
    return [{ part, label, level }];
  });
  return (
    <svg
      className="wear-drawing"
      viewBox={`${x} ${y} ${width} ${height}`}
      role="img"
      aria-label={`${view.name}. How often use touches: ${labels.map(({ part, level }) => `${nameOf(part)} ${oftenWords[level]}`).join('; ') || 'no part shown here'}.`}
    >
      {view.shapes.map((shape, index) => {
        const heat = heatOf(of(shape.part), view.view, isSeating);
        return (
          // biome-ignore lint/a11y/noStaticElementInteractions: the list of parts beside it serves the keyboard
          <g
            // biome-ignore lint/suspicious/noArrayIndexKey: a part can have several shapes, always in this order
            key={`${shape.part}-${index}`}
            className={heat === undefined ? 'wear-shape' : 'wear-shape touched'}
            data-chosen={shape.part === chosen ? '' : undefined}
            onClick={heat === undefined ? undefined : () => onTouch(shape.part)}
          >
            <path className="wear-body" d={shape.d} />
            {heat !== undefined && (
              <>
                <linearGradient
                  id={`${id}-${index}`}
                  x1="0"
                  y1="0"
                  x2={heat.axis === 'x' ? 1 : 0}
                  y2={heat.axis === 'y' ? 1 : 0}
                >
                  {heat.shares.map((share, at) => (
                    <stop
                      // biome-ignore lint/suspicious/noArrayIndexKey: places along the part
                      key={at}
                      offset={(at + 0.5) / heat.shares.length}
                      stopColor="var(--wood-dark)"
                      stopOpacity={(0.95 * share ** 0.6).toFixed(3)}
                    />
                  ))}
                </linearGradient>
                <path d={shape.d} fill={`url(#${id}-${index})`} fillRule="evenodd" />
              </>
            )}
            <path className="wear-line" d={shape.d} />
          </g>
        );
      })}
      {labels.map(({ part, label, level }) => (
        <g key={part} className="wear-level">
          <circle cx={label[0]} cy={label[1]} r={size / 55} />
          <text x={label[0]} y={label[1]} fontSize={size / 38} dy="0.36em">
            {level}
          </text>
        </g>
      ))}
    </svg>
  );
}
