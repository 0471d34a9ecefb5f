import { useEffect, useId, useRef, useState } from 'react';
import { freshId } from '../../record/identity.ts';
import type { ExaminationContext } from '../examinationContext.ts';
import { ExpectedGrid } from './ExpectedGrid.tsx';
import {
  begunObservation,
  blankObservation,
  keepObservation,
  type ObservationDraft,
} from './keptObservation.ts';
import { recordObservation } from './observationActs.ts';
import { PartOf } from './PartOf.tsx';

type Props = {
  context: ExaminationContext;
  /** The part it is begun on. */
  part: string | undefined;
  /** Called when it is recorded (with its id) or given up. */
  onDone: (id?: string) => void;
};

/** Writes a new observation of one's own. What is written stays on this device until it is recorded. */
export function NewObservation({ context, part, onDone }: Props) {
  const id = useId();
  const { piece } = context;
  const [draft, setDraft] = useState<ObservationDraft>(
    () => begunObservation(piece.id) ?? blankObservation(part),
  );
  const [lacks, setLacks] = useState(false);
  const words = useRef<HTMLTextAreaElement>(null);
  useEffect(() => words.current?.focus({ preventScroll: true }), []);
  const change = (to: ObservationDraft) => {
    setDraft(to);
    keepObservation(piece.id, to);
  };
  const record = () => {
    if (draft.words.trim() === '') {
      setLacks(true);
      words.current?.focus();
      return;
    }
    const fresh = freshId();
    context.record(recordObservation({ id: fresh, photos: [], ...draft }));
    keepObservation(piece.id, undefined);
    onDone(fresh);
  };
  const giveUp = () => {
    keepObservation(piece.id, undefined);
    onDone();
  };
  return (
    <form
      className="own-new"
      aria-label="An observation of your own"
      onSubmit={(event) => {
        event.preventDefault();
        record();
      }}
    >
      <div className="field">
        <label htmlFor={`${id}-words`}>What you saw</label>
        <span className="note" id={`${id}-note`}>
          Typed or dictated, as long as it needs to be. Photos can be put to it once it is recorded.
        </span>
        <textarea
          id={`${id}-words`}
          ref={words}
          rows={3}
          value={draft.words}
          autoComplete="off"
          aria-describedby={`${id}-note`}
          aria-invalid={lacks && draft.words.trim() === '' ? true : undefined}
          onChange={(event) => change({ ...draft, words: event.target.value })}
        />
        {lacks && draft.words.trim() === '' && (
          <p className="exam-doubt small" role="alert">
            Say what you saw first.
          </p>
        )}
      </div>
      <PartOf
        context={context}
        part={draft.part}
        onPick={(to) => {
          const { part: _before, ...rest } = draft;
          change(to === undefined ? rest : { ...rest, part: to });
        }}
      />
      <ExpectedGrid expected={draft.expected} onChange={(expected) => change({ ...draft, expected })} />
      <div className="row">
        <button type="submit" className="button">
          Record the observation
        </button>
        <button type="button" className="button plain" onClick={giveUp}>
          Cancel
        </button>
      </div>
    </form>
  );
}
