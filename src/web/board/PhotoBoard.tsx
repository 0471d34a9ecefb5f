import { type ReactNode, useEffect, useId, useMemo, useRef, useState } from 'react';
import type { Point } from '../../photo/picture.ts';
import { BoardButtons } from './BoardButtons.tsx';
import { BoardWords } from './BoardWords.tsx';
import { canStand, held, movedTogether, placeWords } from './boardMark.ts';
import { type BoardView, fitted, isWhole, panned, showing, toFrame, toPicture, zoomed } from './boardView.ts';
import { keyStep, type StepBy } from './keyStep.ts';
import { Loupe } from './Loupe.tsx';
import { MarkDrawn } from './MarkDrawn.tsx';
import { MarkRoll } from './MarkRoll.tsx';
import { nearestPoint } from './nearestPoint.ts';
import type { ShownPicture } from './shownPicture.ts';
import type { Marks } from './useMarks.ts';
import { usePictureCanvas } from './usePictureCanvas.ts';
import { usePointers } from './usePointers.ts';
import { useSize } from './useSize.ts';
import { useWheelZoom } from './useWheelZoom.ts';
import './photoBoard.css';

type Props = {
  picture: ShownPicture;
  /** What the picture shows, for a reader who can't see it. */
  shows: string;
  marks: Marks;
  readOnly?: boolean;
  /** In what the arrow keys step. */
  step?: StepBy;
  /** False where whoever lays the board out lists the marks itself. */
  isRolled?: boolean;
  /** Where a place was touched; sets it as it is where left out. */
  onSet?: (at: Point) => void;
  /** Drawn over the picture, in screen pixels of the frame. */
  over?: (place: (point: Point) => Point, scale: number) => ReactNode;
};

/** A picture, large, with its marks: nearer and further, pushed about, marked by touch, mouse or keys; places are the original’s pixels. */
export function PhotoBoard({
  picture,
  shows,
  marks,
  readOnly = false,
  step: stepBy = 'pixels',
  isRolled = true,
  onSet,
  over,
}: Props) {
  const id = useId();
  const box = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const frame = useSize(box);
  const [looked, setLooked] = useState<BoardView>();
  const [cross, setCross] = useState<Point>();
  const [drag, setDrag] = useState<{ mark: string; index: number; points: Point[] }>();
  const [active, setActive] = useState<number>();
  const laid = frame.widthPx > 0;
  const whole = useMemo(() => (laid ? fitted(picture, frame) : undefined), [laid, picture, frame]);
  const view = looked === undefined ? whole : laid ? panned(looked, [0, 0], picture, frame) : undefined;
  usePictureCanvas(canvas, picture, useSame(view), frame);

  const { placing } = marks;
  const placingId = placing?.id;
  const chosen = marks.list.find((each) => each.id === marks.chosen);
  // Two fingers move in one frame: each of their moves has to build on the other.
  const look = (next: (view: BoardView) => BoardView) =>
    setLooked((now) => {
      const from = now ?? whole;
      return from === undefined ? now : next(from);
    });
  const zoom = (factor: number, at: Point = [frame.widthPx / 2, frame.heightPx / 2]) =>
    look((now) => zoomed(now, factor, at, picture, frame));
  const set = (at: Point) => (onSet ?? ((point: Point) => marks.set([point])))(held(at, picture));
  useEffect(() => {
    if (placingId !== undefined) svg.current?.focus({ preventScroll: true });
  }, [placingId]);

  const { aiming, handlers } = usePointers({
    placing: placing !== undefined,
    grab(at, reachPx) {
      if (view === undefined || readOnly) return false;
      const near = nearestPoint(marks.list, (point) => toFrame(view, point), at, marks.chosen);
      if (near === undefined || near.px > reachPx) return false;
      marks.choose(near.mark.id);
      setActive(near.index);
      setDrag({ mark: near.mark.id, index: near.index, points: [...near.mark.points] });
      return true;
    },
    pull(at) {
      if (view === undefined || drag === undefined) return;
      const points = drag.points.with(drag.index, held(toPicture(view, at), picture));
      setDrag({ ...drag, points });
    },
    letGo() {
      const before = marks.list.find((each) => each.id === drag?.mark);
      if (drag !== undefined && JSON.stringify(before?.points) !== JSON.stringify(drag.points))
        marks.change(drag.mark, drag.points);
      setDrag(undefined);
    },
    aim: (at) =>
      setCross(at === undefined || view === undefined ? undefined : held(toPicture(view, at), picture)),
    place(at, from) {
      if (view === undefined) return;
      const far = Math.hypot(at[0] - from[0], at[1] - from[1]) > 24;
      if (placing?.kind === 'region' && placing.points.length === 0 && far)
        marks.set([held(toPicture(view, from), picture), held(toPicture(view, at), picture)]);
      else set(toPicture(view, at));
    },
    pan: (by) => look((now) => panned(now, by, picture, frame)),
    zoom,
    touch: () => marks.choose(undefined),
  });
  useWheelZoom(svg, zoom);

  const middle = (): Point =>
    view === undefined ? [0, 0] : held(toPicture(view, [frame.widthPx / 2, frame.heightPx / 2]), picture);
  const byKey = (event: React.KeyboardEvent) => {
    const step = keyStep(event, stepBy, picture);
    const key = event.key.toLowerCase();
    if (step !== undefined && placing !== undefined) {
      const [x, y] = cross ?? middle();
      const at = held([x + step[0], y + step[1]], picture);
      setCross(at);
      look((now) => showing(now, at, picture, frame));
    } else if (step !== undefined && chosen !== undefined && !readOnly) {
      const one = active === undefined ? undefined : chosen.points[active];
      const moved =
        active === undefined || one === undefined
          ? movedTogether(chosen.points, step, picture)
          : chosen.points.with(active, held([one[0] + step[0], one[1] + step[1]], picture));
      marks.change(chosen.id, moved);
      look((now) => showing(now, moved[active ?? 0] as Point, picture, frame));
    } else if (step !== undefined) {
      look((now) => panned(now, [-40 * Math.sign(step[0]), -40 * Math.sign(step[1])], picture, frame));
    } else if ((key === 'enter' || key === ' ') && placing !== undefined) set(cross ?? middle());
    else if (key === 'c' && placing !== undefined) {
      if (canStand(placing.kind, placing.points.length, placing.least)) marks.close();
    } else if (key === 'n' && chosen !== undefined)
      setActive(active === undefined ? 0 : (active + 1) % chosen.points.length);
    else if ((key === 'delete' || key === 'backspace') && chosen !== undefined && !readOnly)
      marks.take(chosen.id);
    else if (key === 'escape') {
      marks.begin(undefined);
      setActive(undefined);
    } else if (key === 'z' && (event.ctrlKey || event.metaKey) && marks.undo !== undefined) marks.undo();
    else if (key === '+' || key === '=') zoom(1.5, keyAt());
    else if (key === '-') zoom(1 / 1.5, keyAt());
    else if (key === '0') setLooked(undefined);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const keyAt = (): Point | undefined =>
    cross === undefined || view === undefined ? undefined : toFrame(view, cross);

  const screen = (point: Point): Point => (view === undefined ? point : toFrame(view, point));
  const aimed =
    placing !== undefined ? (cross ?? (aiming === undefined ? middle() : undefined)) : drag && cross;
  const aimedAt = aimed === undefined ? undefined : screen(aimed);
  return (
    <div className="photo-board stack-tight">
      <p className="small photo-how" id={`${id}-how`}>
        <BoardWords {...{ placing, chosen, readOnly }} step={stepBy} scale={view?.scale} />
      </p>
      <BoardButtons
        marks={marks}
        readOnly={readOnly}
        onZoom={zoom}
        onWhole={() => setLooked(undefined)}
        shown={view?.scale}
      />
      <div
        className="photo-frame"
        ref={box}
        style={{ aspectRatio: `${picture.widthPx} / ${picture.heightPx}` }}
      >
        <canvas ref={canvas} />
        <svg
          ref={svg}
          role="application"
          aria-roledescription="picture to set marks on"
          aria-label={shows}
          aria-describedby={`${id}-how`}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the surface takes the keys
          tabIndex={0}
          data-placing={placing === undefined ? undefined : ''}
          data-whole={view !== undefined && isWhole(view, picture, frame) ? '' : undefined}
          onKeyDown={byKey}
          onContextMenu={(event) => event.preventDefault()}
          {...handlers}
        >
          {view !== undefined && over?.(screen, view.scale)}
          {view !== undefined &&
            marks.list.map((mark, index) => (
              <MarkDrawn
                key={mark.id}
                mark={{
                  kind: mark.kind,
                  points: (drag?.mark === mark.id ? drag.points : mark.points).map(screen),
                }}
                number={mark.number ?? index + 1}
                chosen={mark.id === marks.chosen}
              />
            ))}
          {placing !== undefined && (
            <MarkDrawn
              mark={{
                kind: placing.kind,
                points: [...placing.points, ...(cross === undefined ? [] : [cross])].map(screen),
              }}
              number={marks.list.length + 1}
              chosen
              sketched
            />
          )}
          {aimedAt !== undefined && placing !== undefined && (
            <g className="photo-aim" transform={`translate(${aimedAt[0]} ${aimedAt[1]})`}>
              <path className="photo-halo" d="M-24 0H-6M6 0H24M0 -24V-6M0 6V24" strokeWidth="4" />
              <path className="photo-cross" d="M-24 0H-6M6 0H24M0 -24V-6M0 6V24" strokeWidth="1.75" />
            </g>
          )}
        </svg>
        {view !== undefined && aimed !== undefined && aimedAt !== undefined && (
          <Loupe
            picture={picture}
            at={aimed}
            scale={view.scale}
            side={aimedAt[0] < frame.widthPx / 2 ? 'right' : 'left'}
          />
        )}
      </div>
      <p className="unseen" role="status">
        {placing !== undefined && aiming === undefined && cross !== undefined
          ? `Cross at ${placeWords(cross)}. ${placing.points.length} set.`
          : active !== undefined && chosen?.points[active] !== undefined
            ? `Point ${active + 1} of ${chosen.name} at ${placeWords(chosen.points[active])}.`
            : ''}
      </p>
      {isRolled && (
        <MarkRoll
          marks={marks}
          readOnly={readOnly}
          onChoose={(mark) => {
            marks.choose(mark.id);
            setActive(undefined);
            svg.current?.focus({ preventScroll: true });
            look((now) => showing(now, mark.points[0] as Point, picture, frame));
          }}
        />
      )}
    </div>
  );
}

/** The same view as long as its numbers are the same, so that nothing is drawn twice. */
function useSame(view: BoardView | undefined): BoardView | undefined {
  const [scale, left, top] = [view?.scale, view?.left, view?.top];
  return useMemo(
    () => (scale === undefined || left === undefined || top === undefined ? undefined : { scale, left, top }),
    [scale, left, top],
  );
}
