import { useId } from 'react';
import { labelSize, placeLabel } from '../../drawing/signLabels.ts';
import { signStrokes } from '../../drawing/signStrokes.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import { type SignDrawing, signDrawingBox } from '../../knowledge/signDrawingSchema.ts';
import './signDrawing.css';

/** The drawings that show a sign. */
export function drawingsOfSign(sign: string, drawings: Knowledge['signDrawings']): SignDrawing[] {
  return Object.values(drawings ?? {}).filter((drawing) => drawing.signs.includes(sign));
}

/** A line drawing of how a sign looks, with what is drawn in words beneath it. */
export function SignDrawingFigure({ drawing }: { drawing: SignDrawing }) {
  const id = useId();
  return (
    <figure className="sign-drawing">
      <svg
        className="on-paper"
        viewBox={`0 0 ${signDrawingBox.width} ${signDrawingBox.height}`}
        role="img"
        aria-labelledby={`${id}-title`}
        aria-describedby={`${id}-what`}
      >
        <title id={`${id}-title`}>{drawing.title}</title>
        {signStrokes(drawing).map(({ as, d }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a drawing never changes while it is shown
          <path key={index} className={`stroke-${as}`} d={d} />
        ))}
        {(drawing.labels ?? []).map(placeLabel).map(({ words, x, baseline, leader }) => (
          <g key={`${words} ${x} ${baseline}`}>
            {leader === undefined ? null : <path className="stroke-leader" d={leader} />}
            <text x={x} y={baseline} fontSize={labelSize} textAnchor="middle">
              {words}
            </text>
          </g>
        ))}
      </svg>
      <figcaption id={`${id}-what`} className="small">
        <b>{drawing.title}.</b> {drawing.what}
      </figcaption>
    </figure>
  );
}
