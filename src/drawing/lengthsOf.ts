import type { Form } from '../knowledge/schema.ts';
import { evaluate, type Lengths } from './expression.ts';
import { usualSizes } from './usualSizes.ts';

/** Something of a form's drawing that can't be drawn: where it stands, and in words what to mend. */
export type DrawingFault = { code: `drawing.${string}`; at: string; message: string };

/**
 * All names the drawing of a form may speak of: its measures, and the lengths worked out from them, in order.
 *
 * @param measuresMm  by the measure's id; one that is not there, or is no size, counts as usual of the form
 * @param features    option id by feature id: some sizes are usual with certain features only
 */
export function lengthsOf(
  form: Form,
  measuresMm: Readonly<Record<string, number>>,
  features: Readonly<Record<string, string>>,
): { lengths: Lengths; faults: DrawingFault[] } {
  const lengths: Record<string, number> = {};
  const faults: DrawingFault[] = [];
  for (const [id, usual] of Object.entries(usualSizes(form, features))) {
    const given = Object.hasOwn(measuresMm, id) ? measuresMm[id] : undefined;
    const isSize = given !== undefined && Number.isFinite(given) && given > 0;
    lengths[nameInExpressions(id)] = isSize ? given : usual;
  }
  for (const [name, text] of Object.entries(form.lengths)) {
    const at = `length ${name}`;
    if (Object.hasOwn(lengths, name)) {
      const message = `"${name}" is already a measure or length: give this one another name.`;
      faults.push({ code: 'drawing.name-twice', at, message });
      continue;
    }
    const result = evaluate(text, lengths);
    if (result.ok) lengths[name] = result.value;
    else faults.push({ code: 'drawing.length-unreadable', at, message: result.message });
  }
  return { lengths, faults };
}

/** A measure's id as expressions write it, where a hyphen would be a minus: `seat-width-front` is `seatWidthFront`. */
function nameInExpressions(id: string): string {
  return id.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
}
