import { useEffect, useId, useRef, useState } from 'react';
import { capital } from '../../../ground/words.ts';
import type { Measure } from '../../../piece/measure.ts';
import { dropText, keepText, keptTextFor } from '../../fields/keptText.ts';
import { useTextKey } from '../../fields/TextPlace.tsx';
import type { ExaminationContext } from '../examinationContext.ts';
import { type FormMeasure, measureAct, readMeasure } from './readMeasure.ts';

type Props = {
  id: string;
  name: string;
  how?: string;
  usual?: FormMeasure;
  words?: string;
  measure: Measure | undefined;
  context: ExaminationContext;
  onFocus?: () => void;
  onKept?: () => void;
};

/** One measure: kept when the field is left or Enter is pressed, read back at once in both units. */
export function MeasureField({ id, name, how, usual, words, measure, context, onFocus, onKept }: Props) {
  const field = useId();
  const stood = measure?.asEntered ?? '';
  const key = useTextKey(`measure ${id}`);
  const [text, setText] = useState(() => keptTextFor(key, stood) ?? stood);
  const shown = useRef(stood);
  useEffect(() => {
    if (shown.current !== stood) setText(stood);
    shown.current = stood;
  }, [stood]);
  const type = (next: string) => {
    setText(next);
    keepText(key, { text: next, stood });
  };
  const entry = readMeasure(text, usual);
  const keep = () => {
    const act = measureAct(id, text, measure, words);
    if (act === undefined) return;
    context.record(act);
    dropText(key);
    onKept?.();
  };
  return (
    <div className="field exam-measure">
      <label htmlFor={field}>{capital(name)}</label>
      <div className="exam-measure-line">
        <input
          id={field}
          value={text}
          readOnly={context.readOnly}
          autoComplete="off"
          inputMode="text"
          aria-describedby={`${field}-says`}
          aria-invalid={entry.kind === 'unreadable'}
          onChange={(event) => type(event.target.value)}
          onFocus={onFocus}
          onBlur={keep}
          onKeyDown={(event) => event.key === 'Enter' && keep()}
        />
        <output className="exam-echo" htmlFor={field}>
          {entry.kind === 'length' ? entry.echo : ''}
        </output>
      </div>
      <div id={`${field}-says`}>
        {entry.kind === 'unreadable' && <p className="doubt">{entry.message}</p>}
        {entry.kind === 'length' && entry.doubt !== undefined && <p className="doubt">{entry.doubt}</p>}
        {how !== undefined && <p className="note">{how}</p>}
      </div>
    </div>
  );
}
