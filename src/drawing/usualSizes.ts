import type { Form } from '../knowledge/schema.ts';
import { featuresOf, isMet } from './partsOf.ts';

/**
 * The usual size of every measure of a form with these features, in mm: a joint stool stands higher than a stuffed one.
 *
 * @param features  option id by feature id; a feature not yet chosen counts as the form's first option
 * @returns by the measure's id: the first of its `usual` sizes whose features are met, else `typicalMm`
 */
export function usualSizes(form: Form, features: Readonly<Record<string, string>>): Record<string, number> {
  const chosen = featuresOf(form, features);
  return Object.fromEntries(
    form.measures.map(({ id, typicalMm, usual }) => [
      id,
      usual.find(({ when }) => isMet(when, chosen))?.mm ?? typicalMm,
    ]),
  );
}
