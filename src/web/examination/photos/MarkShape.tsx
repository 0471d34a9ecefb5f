import type { PointerEvent } from 'react';
import type { Photo, PhotoMark } from '../../../piece/photo.ts';
import type { Drawing, Place } from './placeMark.ts';

/** `unit` is how many of the photo’s pixels one pixel of the screen takes, so that marks look alike at every size. */
type Frame = { photo: Photo; unit: number };
type MarkProps = Frame & {
  mark: PhotoMark;
  chosen: boolean;
  onGrab: (event: PointerEvent, point: number | undefined) => void;
};

/** A mark that stands, with its number; drawn light on dark so that it shows on any picture. */
export function Mark({ mark, photo, unit, chosen, onGrab }: MarkProps) {
  const points = inPixels(mark.points, photo);
  const [x, y] = points[0] ?? [0, 0];
  return (
    <g
      className="exam-mark"
      data-chosen={chosen ? '' : undefined}
      onPointerDown={(event) => onGrab(event, undefined)}
    >
      <path className="exam-mark-reach" d={pathOf(points, mark.kind)} strokeWidth={unit * 40} />
      <path className="exam-mark-halo" d={pathOf(points, mark.kind)} strokeWidth={unit * 6} />
      <path className="exam-mark-line" d={pathOf(points, mark.kind)} strokeWidth={unit * 2.5} />
      <circle className="exam-mark-reach" cx={x} cy={y} r={unit * 22} />
      <circle className="exam-mark-badge" cx={x} cy={y} r={unit * 13} strokeWidth={unit * 2} />
      <text className="exam-mark-number" x={x} y={y} fontSize={unit * 16} dy="0.36em">
        {mark.number}
      </text>
      {chosen &&
        mark.kind !== 'point' &&
        points.map(([px, py], index) => (
          <circle
            // biome-ignore lint/suspicious/noArrayIndexKey: corners have no other name than their order
            key={index}
            className="exam-mark-corner"
            cx={px}
            cy={py}
            r={unit * 10}
            strokeWidth={unit * 2}
            onPointerDown={(event) => onGrab(event, index)}
          />
        ))}
    </g>
  );
}

/** What has been placed so far of a mark being drawn. */
export function SketchedMark({ drawing, photo, unit }: Frame & { drawing: Drawing }) {
  const points = inPixels([...drawing.places, drawing.at], photo);
  return (
    <g className="exam-sketch">
      <path className="exam-mark-halo" d={pathOf(points, 'line')} strokeWidth={unit * 6} />
      <path
        className="exam-mark-line"
        d={pathOf(points, 'line')}
        strokeWidth={unit * 2.5}
        strokeDasharray={unit * 7}
      />
    </g>
  );
}

/** Where the next place will be set. */
export function CrossHair({ at, photo, unit }: Frame & { at: Place }) {
  const [x, y] = inPixels([at], photo)[0] as Place;
  const arm = unit * 28;
  const d = `M${x - arm} ${y}H${x + arm}M${x} ${y - arm}V${y + arm}`;
  return (
    <g className="exam-cross">
      <path className="exam-mark-halo" d={d} strokeWidth={unit * 5} />
      <path className="exam-mark-line" d={d} strokeWidth={unit * 2} />
    </g>
  );
}

function inPixels(points: readonly (readonly [number, number])[], photo: Photo): Place[] {
  return points.map(([x, y]) => [x * photo.widthPx, y * photo.heightPx]);
}

function pathOf(points: readonly Place[], kind: PhotoMark['kind']): string {
  const steps = points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${x} ${y}`).join('');
  return kind === 'outline' ? `${steps}Z` : steps;
}
