import { usualSizes } from '../../../drawing/usualSizes.ts';
import { formatBoth } from '../../../units/length.ts';
import { measuresOf } from '../../examination/measures/readMeasure.ts';
import { LengthField } from '../../fields/LengthField.tsx';
import type { BenchContext } from '../benchContext.ts';

type Size = { text: string; mm: number };
type Props = {
  context: BenchContext;
  typed: Record<string, Size>;
  onType: (id: string, size: Size | undefined) => void;
};

/** Measures that the piece has not been given: asked for, with the usual size that stands in meanwhile. */
export function MissingSizes({ context, typed, onType }: Props) {
  const { form, piece } = context;
  const usual = usualSizes(form, piece.features);
  const missing = measuresOf(form, piece.features).filter(({ id }) => piece.measures[id] === undefined);
  if (missing.length === 0) return null;
  return (
    <details>
      <summary>
        Sizes not measured on this piece ({missing.length}): the usual ones are taken, or what you write here
      </summary>
      <div className="bench-fields">
        {missing.map(({ id, name }) => (
          <LengthField
            key={id}
            label={name}
            note={`Usual: ${formatBoth(usual[id] ?? 0)}.`}
            begin={typed[id]?.text ?? ''}
            onLength={(mm) => onType(id, mm === undefined ? undefined : { text: `${mm} mm`, mm })}
          />
        ))}
      </div>
      <p className="small soft">
        Sizes written here serve this tool only; the piece’s own are in the examination.
      </p>
    </details>
  );
}
