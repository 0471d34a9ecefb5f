import { useId, useState } from 'react';
import type { ExaminationContext } from '../examinationContext.ts';
import { MeasureField } from './MeasureField.tsx';
import { MeasureSketch } from './MeasureSketch.tsx';
import { measuresOf } from './readMeasure.ts';

/** The measures of the form, where each is taken, and the examiner's own. */
export function MeasuresTab({ context }: { context: ExaminationContext }) {
  const form = context.knowledge.forms[context.piece.form];
  const [at, setAt] = useState<string | undefined>(undefined);
  if (form === undefined)
    return (
      <p>The form “{context.piece.form}” is not in the knowledge files, so its measures are not known.</p>
    );
  const listed = measuresOf(form, context.piece.features);
  const own = Object.values(context.piece.measures).filter(
    (measure) => !form.measures.some((each) => each.id === measure.id),
  );
  const shown = listed.find((each) => each.id === at) ?? listed[0];
  return (
    <div className="exam-measures">
      <div className="stack">
        <p className="soft">Inches as you write them, or millimeters: 37 1/8, 37⅛", 3 ft 1 1/8 in, 943 mm.</p>
        {listed.map((measure) => (
          <MeasureField
            key={measure.id}
            id={measure.id}
            name={measure.name}
            how={measure.how}
            usual={measure}
            measure={context.piece.measures[measure.id]}
            context={context}
            onFocus={() => setAt(measure.id)}
          />
        ))}
        <h2>Your own measures</h2>
        {own.map((measure) => (
          <MeasureField
            key={measure.id}
            id={measure.id}
            name={measure.words === '' ? measure.id : measure.words}
            measure={measure}
            context={context}
          />
        ))}
        {!context.readOnly && <OwnMeasure context={context} />}
      </div>
      {shown !== undefined && <MeasureSketch form={form} context={context} measure={shown} />}
    </div>
  );
}

function OwnMeasure({ context }: { context: ExaminationContext }) {
  const id = useId();
  const [name, setName] = useState('');
  const [fresh, setFresh] = useState(() => `own-${crypto.randomUUID().slice(0, 8)}`);
  return (
    <div className="exam-own">
      <div className="field">
        <label htmlFor={id}>What is measured</label>
        <input id={id} value={name} autoComplete="off" onChange={(event) => setName(event.target.value)} />
      </div>
      {name.trim() !== '' && (
        <MeasureField
          key={fresh}
          id={fresh}
          name={name.trim()}
          words={name.trim()}
          measure={undefined}
          context={context}
          onKept={() => {
            setName('');
            setFresh(`own-${crypto.randomUUID().slice(0, 8)}`);
          }}
        />
      )}
    </div>
  );
}
