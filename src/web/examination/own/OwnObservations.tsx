import { useEffect, useRef, useState } from 'react';
import { mostOfObservation } from '../../../evidence/readingWeights.ts';
import type { ExaminationContext } from '../examinationContext.ts';
import { begunObservation } from './keptObservation.ts';
import { NewObservation } from './NewObservation.tsx';
import { ObservationCard } from './ObservationCard.tsx';
import './own.css';

type Props = {
  context: ExaminationContext;
  /** Only those of one part, or of the whole piece (`part` undefined); all of them where it is left out. */
  only?: { part: string | undefined };
};

/** What was seen that no sign covers, with a place to enter more. */
export function OwnObservations({ context, only }: Props) {
  const all = Object.values(context.piece.observations);
  const shown = only === undefined ? all : all.filter((each) => each.part === only.part);
  const begun = begunObservation(context.piece.id);
  const [writing, setWriting] = useState(
    !context.readOnly && begun !== undefined && (only === undefined || begun.part === only.part),
  );
  const [fresh, setFresh] = useState<string>();
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (fresh !== undefined)
      place.current?.querySelector<HTMLElement>(`[data-observation="${fresh}"] [data-sign-name]`)?.focus();
  }, [fresh]);
  if (context.readOnly && shown.length === 0) return null;
  return (
    <div className="own-list" ref={place}>
      {shown.length > 0 && (
        <ul className="exam-signs" aria-label="Your own observations">
          {shown.map((observation) => (
            <ObservationCard
              key={observation.id}
              context={context}
              observation={observation}
              openAtFirst={false}
            />
          ))}
        </ul>
      )}
      {writing ? (
        <>
          <NewObservation
            context={context}
            part={only?.part}
            onDone={(id) => {
              setWriting(false);
              setFresh(id);
            }}
          />
          <p className="small soft">{capWords}</p>
        </>
      ) : (
        !context.readOnly && (
          <p>
            <button type="button" className="button quiet" onClick={() => setWriting(true)}>
              {begun === undefined ? 'Something no sign covers' : 'Go on with the observation you began'}
            </button>
          </p>
        )
      )}
    </div>
  );
}

/** How far an observation of one's own can count, and what to make of it where it comes up again. */
export const capWords = `An observation of your own counts at most ${mostOfObservation} to 1; what you meet again and again can be proposed as a sign of your own, with figures.`;
