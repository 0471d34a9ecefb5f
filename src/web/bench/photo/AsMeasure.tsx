import { useState } from 'react';
import { capital } from '../../../ground/words.ts';
import type { Json } from '../../../piece/event.ts';
import type { Measure } from '../../../piece/measure.ts';
import { told } from '../../../units/doubt.ts';
import { formatBoth } from '../../../units/length.ts';
import { measuresOf } from '../../examination/measures/readMeasure.ts';
import { PickField } from '../../fields/PickField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import type { BenchContext } from '../benchContext.ts';

type Props = { context: BenchContext; mm: number; sigmaMm: number; from: string };

/** Records a length from a photo as one of the measures of the piece, in place of what stood there. */
export function AsMeasure({ context, mm, sigmaMm, from }: Props) {
  const measures = measuresOf(context.form, context.piece.features);
  const [picked, pick] = useState(measures[0]?.id ?? '');
  const [words, setWords] = useState('');
  const [said, setSaid] = useState('');
  const which = measures.find(({ id }) => id === picked);
  if (which === undefined) return null;
  const before = context.piece.measures[picked];
  const record = () => {
    const measure: Measure = {
      id: picked,
      mm,
      sigmaMm,
      asEntered: `${mm.toFixed(1)} mm`,
      words: words.trim() || `From ${from}, give or take ${told(sigmaMm).toFixed(1)} mm.`,
    };
    context.record({
      kind: 'measure-recorded',
      changes: [{ path: ['measures', picked], to: measure as Json }],
    });
    setSaid(`Recorded as ${which.name}.`);
  };
  return (
    <details className="photo-as">
      <summary>Record it as a measure of the piece</summary>
      <div className="bench-fields">
        <PickField
          label="Which measure"
          value={picked}
          options={measures.map(({ id, name }) => ({ id, name: capital(name) }))}
          onPick={pick}
        />
        <TextField
          label="In words"
          value={words}
          save={setWords}
          note="How it was taken, where left empty."
        />
      </div>
      {before !== undefined && (
        <p className="small">
          {formatBoth(before.mm)} stands there now ({before.asEntered}); the history keeps it.
        </p>
      )}
      <div className="row">
        <button type="button" className="button quiet" onClick={record}>
          Record the measure
        </button>
        <span role="status" className="small">
          {said}
        </span>
      </div>
    </details>
  );
}
