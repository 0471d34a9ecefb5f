import { drawForm } from '../../drawing/drawForm.ts';
import type { Form } from '../../knowledge/schema.ts';

type FormPictureProps = {
  form: Form;
  features: Record<string, string>;
  view?: 'front' | 'side' | 'back' | 'underside';
};

/** A small line drawing of a form with its usual sizes. The words beside it name it, so a reader need not hear it. */
export function FormPicture({ form, features, view = 'front' }: FormPictureProps) {
  const drawn = drawForm(form, features, {}).views.find((one) => one.view === view);
  if (drawn === undefined) return null;
  const [x, y, width, height] = drawn.box;
  const room = Math.max(width, height) * 0.02;
  return (
    <svg
      className="form-picture"
      viewBox={`${x - room} ${y - room} ${width + 2 * room} ${height + 2 * room}`}
      aria-hidden="true"
    >
      {drawn.shapes.map((shape) => (
        <path key={`${shape.part} ${shape.d}`} d={shape.d} />
      ))}
    </svg>
  );
}

/** The view in which the options of a feature differ most. */
export function tellingView(feature: string): 'front' | 'underside' {
  return feature === 'stretchers' || feature === 'seat' ? 'underside' : 'front';
}
