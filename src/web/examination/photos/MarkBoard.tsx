import { type KeyboardEvent, type PointerEvent, useId, useRef, useState } from 'react';
import type { Photo, PhotoMark } from '../../../piece/photo.ts';
import { CrossHair, Mark, SketchedMark } from './MarkShape.tsx';
import {
  arrowStep,
  canStand,
  type Drawing,
  isComplete,
  type MarkKind,
  moved,
  movedTogether,
  type Place,
  placeWords,
  setPlace,
} from './placeMark.ts';
import { useWidthPx } from './useWidthPx.ts';

type Props = {
  photo: Photo;
  readOnly: boolean;
  chosen: string | undefined;
  onChoose: (id: string | undefined) => void;
  onAdd: (kind: MarkKind, points: Place[]) => void;
  onChange: (mark: PhotoMark) => void;
};

const kinds: [MarkKind, string][] = [
  ['point', 'Point'],
  ['line', 'Line'],
  ['outline', 'Outline'],
];
const zooms = [1, 2, 4] as const;

/** The picture with its marks. A mark is drawn by pointer, or by arrow keys and Enter; one that stands is moved the same way. */
export function MarkBoard({ photo, readOnly, chosen, onChoose, onAdd, onChange }: Props) {
  const id = useId();
  const svg = useRef<SVGSVGElement>(null);
  const [drawing, setDrawing] = useState<Drawing | undefined>(undefined);
  const [drag, setDrag] = useState<{ mark: PhotoMark; from: Place; point: number | undefined } | undefined>(
    undefined,
  );
  const [zoom, setZoom] = useState<number>(1);
  const mark = drag?.mark ?? photo.marks.find((each) => each.id === chosen);

  const begin = (kind: MarkKind) => {
    onChoose(undefined);
    setDrawing({ kind, places: [], at: [0.5, 0.5] });
    svg.current?.focus();
  };
  const finish = (done: Drawing) => {
    if (!canStand(done)) return;
    onAdd(done.kind, done.places);
    setDrawing(undefined);
  };
  const place = (at: Place) => {
    if (drawing === undefined) return;
    const next = setPlace(drawing, at);
    if (isComplete(next)) finish(next);
    else setDrawing(next);
  };
  const placeOf = (event: PointerEvent): Place => {
    const box = svg.current?.getBoundingClientRect();
    if (box === undefined) return [0.5, 0.5];
    return moved([(event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height], [0, 0]);
  };
  const byKey = (event: KeyboardEvent) => {
    const step = arrowStep(event.key, event.shiftKey);
    if (drawing !== undefined) {
      if (step !== undefined) setDrawing({ ...drawing, at: moved(drawing.at, step) });
      else if (event.key === 'Enter' || event.key === ' ') place(drawing.at);
      else if (event.key.toLowerCase() === 'f') finish(drawing);
      else if (event.key === 'Escape') setDrawing(undefined);
      else return;
    } else if (step !== undefined && mark !== undefined && !readOnly) {
      onChange({ ...mark, points: movedTogether(mark.points, step) });
    } else return;
    event.preventDefault();
  };
  const down = (event: PointerEvent<SVGSVGElement>) => {
    if (drawing === undefined) return;
    event.preventDefault();
    place(placeOf(event));
  };
  const grab = (event: PointerEvent, which: PhotoMark, point: number | undefined) => {
    if (drawing !== undefined) return;
    event.stopPropagation();
    onChoose(which.id);
    if (readOnly) return;
    svg.current?.setPointerCapture(event.pointerId);
    setDrag({ mark: which, from: placeOf(event), point });
  };
  const pull = (event: PointerEvent) => {
    if (drawing !== undefined && event.pointerType === 'mouse')
      setDrawing({ ...drawing, at: placeOf(event) });
    if (drag === undefined) return;
    const at = placeOf(event);
    const by: Place = [at[0] - drag.from[0], at[1] - drag.from[1]];
    const points =
      drag.point === undefined
        ? movedTogether(drag.mark.points, by)
        : drag.mark.points.map((each, index) => (index === drag.point ? at : each));
    setDrag({ ...drag, from: at, mark: { ...drag.mark, points } });
  };
  const release = () => {
    const before = photo.marks.find((each) => each.id === drag?.mark.id);
    if (drag !== undefined && JSON.stringify(before?.points) !== JSON.stringify(drag.mark.points))
      onChange(drag.mark);
    setDrag(undefined);
  };

  const shownPx = useWidthPx(svg);
  const unit = shownPx > 0 ? photo.widthPx / shownPx : photo.widthPx / 640;
  return (
    <div className="exam-board">
      <div className="row">
        {!readOnly && (
          <fieldset className="exam-tools" aria-label="Draw a mark">
            {kinds.map(([kind, words]) => (
              <button
                key={kind}
                type="button"
                className="exam-answer"
                aria-pressed={drawing?.kind === kind}
                onClick={() => begin(kind)}
              >
                {words}
              </button>
            ))}
          </fieldset>
        )}
        <fieldset className="exam-tools" aria-label="Zoom">
          {zooms.map((each) => (
            <button
              key={each}
              type="button"
              className="exam-answer"
              aria-pressed={zoom === each}
              onClick={() => setZoom(each)}
            >
              {each}×
            </button>
          ))}
        </fieldset>
      </div>
      <p className="small" id={`${id}-how`}>
        {sayHow(drawing, mark, readOnly)}
      </p>
      <p className="unseen" role="status">
        {drawing === undefined
          ? ''
          : `Cross-hair at ${placeWords(drawing.at)}. ${drawing.places.length} placed.`}
      </p>
      {drawing !== undefined && (
        <div className="row">
          {drawing.kind === 'outline' && (
            <button
              type="button"
              className="button"
              disabled={!canStand(drawing)}
              onClick={() => finish(drawing)}
            >
              Close the outline
            </button>
          )}
          <button type="button" className="button quiet" onClick={() => setDrawing(undefined)}>
            Cancel
          </button>
        </div>
      )}
      <section className="exam-board-frame" tabIndex={zoom > 1 ? 0 : undefined} aria-label="The photo">
        <svg
          ref={svg}
          className="exam-board-picture"
          style={{ width: `${zoom * 100}%`, aspectRatio: `${photo.widthPx} / ${photo.heightPx}` }}
          viewBox={`0 0 ${photo.widthPx} ${photo.heightPx}`}
          role="application"
          aria-roledescription="picture to draw marks on"
          aria-label={photo.alternative || photo.caption || photo.name}
          aria-describedby={`${id}-how`}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the surface takes the keys
          tabIndex={0}
          data-drawing={drawing === undefined ? undefined : ''}
          onKeyDown={byKey}
          onPointerDown={down}
          onPointerMove={pull}
          onPointerUp={release}
          onPointerCancel={() => setDrag(undefined)}
        >
          <image href={source(photo, zoom)} width={photo.widthPx} height={photo.heightPx} />
          {photo.marks.map((each) => {
            const shown = drag?.mark.id === each.id ? drag.mark : each;
            return (
              <Mark
                key={each.id}
                mark={shown}
                photo={photo}
                unit={unit}
                chosen={each.id === chosen}
                onGrab={(event, point) => grab(event, shown, point)}
              />
            );
          })}
          {drawing !== undefined && <SketchedMark drawing={drawing} photo={photo} unit={unit} />}
          {drawing !== undefined && <CrossHair at={drawing.at} photo={photo} unit={unit} />}
        </svg>
      </section>
    </div>
  );
}

/** The picture to show: one made for screens, or the original where one looks closer than that holds. */
function source(photo: Photo, zoom: number): string {
  const shown =
    photo.mediaType === 'image/jpeg' || photo.mediaType === 'image/png' || photo.mediaType === 'image/webp';
  const closer = zoom > 2 && Math.max(photo.widthPx, photo.heightPx) > 2048;
  return `/api/photos/${photo.sha256}/${shown && closer ? 'original' : 'view'}`;
}

function sayHow(drawing: Drawing | undefined, mark: PhotoMark | undefined, readOnly: boolean): string {
  if (readOnly) return 'The marks are numbered as they are printed.';
  if (drawing === undefined) {
    return mark === undefined
      ? 'Choose a kind of mark to draw one, or touch one that stands.'
      : `Mark ${mark.number}: drag it, or move it with the arrow keys.`;
  }
  const what = {
    point: 'Touch the place.',
    line: 'Touch where the line begins, then where it ends.',
    outline: 'Touch corner after corner, then close the outline.',
  }[drawing.kind];
  return `${what} By keyboard: arrow keys move the cross-hair (with Shift in longer steps), Enter places${drawing.kind === 'outline' ? ', F closes' : ''}, Escape leaves off.`;
}
