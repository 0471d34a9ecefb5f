import { useEffect, useMemo, useRef, useState } from 'react';
import { drawForm } from '../../drawing/drawForm.ts';
import { standings } from '../../drawing/hatching.ts';
import { sidesUnder } from '../../drawing/sides.ts';
import type { Form } from '../../knowledge/schema.ts';
import type { FirstAnswer } from '../../weighing/firstAnswer.ts';
import type { ExaminationContext } from './examinationContext.ts';
import { HatchKey } from './HatchKey.tsx';
import { measuresMm } from './measures/viewMovedMost.ts';
import { countByPart, PartList, wholeChoice } from './PartList.tsx';
import { PartPanel } from './PartPanel.tsx';
import { PieceDrawing } from './PieceDrawing.tsx';
import { UploadList } from './photos/UploadList.tsx';
import type { ExamPlace } from './placeInHash.ts';
import type { SignFilter } from './signsOnPart.ts';
import { standingByPart } from './standings.ts';

type Props = {
  context: ExaminationContext;
  form: Form;
  first: FirstAnswer | undefined;
  place: ExamPlace;
  onGo: (part: string | undefined) => void;
};

/** The drawing, its parts, and the signs of the part that was touched. */
export function PartsTab({ context, form, first, place, onGo }: Props) {
  const { piece, parts } = context;
  const [viewAt, setViewAt] = useState(0);
  const [filter, setFilter] = useState<SignFilter>(context.readOnly ? 'answered' : 'all');
  const stage = useRef<HTMLDivElement>(null);
  const drawing = useMemo(() => drawForm(form, piece.features, measuresMm(form, piece)), [form, piece]);
  const names = useMemo(() => Object.fromEntries(parts.map((part) => [part.id, part.name])), [parts]);
  const standing = standingByPart(first);
  const view = drawing.views[viewAt] ?? drawing.views[0];
  const chosen =
    place.part === wholeChoice || parts.some((part) => part.id === place.part) ? place.part : undefined;
  const { views } = drawing;
  // A part that this view does not show is brought into sight; whoever then turns to another view is left there.
  useEffect(() => {
    const shows = (index: number) => views[index]?.shapes.some((shape) => shape.part === chosen) ?? false;
    if (chosen !== undefined && chosen !== wholeChoice)
      setViewAt((now) =>
        shows(now)
          ? now
          : Math.max(
              0,
              views.findIndex((_, index) => shows(index)),
            ),
      );
  }, [chosen, views]);
  const last = useRef(chosen);
  useEffect(() => {
    if (chosen === undefined && last.current !== undefined)
      stage.current?.querySelector<HTMLElement>(`[data-part-button="${last.current}"]`)?.focus();
    last.current = chosen;
  }, [chosen]);
  const shown = standings.filter((each) => parts.some((part) => standing[part.id] === each));
  return (
    <div className="exam-bench" data-open={chosen === undefined ? undefined : ''}>
      <div className="exam-stage" ref={stage}>
        <fieldset className="exam-views" aria-label="View">
          {drawing.views.map((each, index) => (
            <button
              key={each.view}
              type="button"
              className="exam-answer"
              aria-pressed={each === view}
              onClick={() => setViewAt(index)}
            >
              {each.name}
            </button>
          ))}
        </fieldset>
        {view !== undefined && (
          <PieceDrawing
            view={view}
            names={names}
            standing={standing}
            counts={countByPart(piece)}
            missing={Object.values(piece.parts).flatMap((part) => (part.missing ? [part.id] : []))}
            selected={chosen}
            onTouch={onGo}
          />
        )}
        {view !== undefined && <p className="small soft">{sidesUnder(view.view, form.sides)}</p>}
        {first !== undefined && <HatchKey shown={shown} />}
        <p className="small soft">
          {first === undefined ? 'The findings are not weighed yet.' : 'Touch a part, or choose it here.'}
        </p>
        <PartList context={context} standing={standing} chosen={chosen} onChoose={onGo} />
      </div>
      <div className="exam-side">
        <UploadList uploads={context.uploads} />
        {chosen === undefined ? (
          <p className="exam-invite said">Touch a part of the drawing. Its signs open here.</p>
        ) : (
          <PartPanel
            key={chosen}
            context={context}
            chosen={chosen}
            sign={place.sign}
            stands={first?.parts.find((part) => part.id === chosen)}
            filter={place.sign === undefined ? filter : 'all'}
            onFilter={(next) => {
              setFilter(next);
              if (place.sign !== undefined) onGo(chosen);
            }}
            onShown={() => stage.current?.scrollIntoView({ block: 'start' })}
            onClose={() => onGo(undefined)}
          />
        )}
      </div>
    </div>
  );
}
