import type { Form, FormPart } from '../knowledge/schema.ts';

/**
 * The parts a piece of this form has, given its features; a feature not yet chosen counts as the form's first option,
 * and so does one chosen with an option that the form does not know.
 *
 * @param features  option id by feature id
 */
export function partsOf(form: Form, features: Readonly<Record<string, string>>): FormPart[] {
  const chosen = featuresOf(form, features);
  return form.parts.filter((part) => isMet(part.when, chosen));
}

/** Every feature of a form with the option chosen, or its first. */
export function featuresOf(form: Form, features: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(
    form.features.map(({ id, options }) => [
      id,
      (options.find((option) => option.id === features[id]) ?? options[0])?.id ?? '',
    ]),
  );
}

/** Whether the features are among those a part, measure or shape asks for. */
export function isMet(
  when: Readonly<Record<string, readonly string[]>>,
  chosen: Readonly<Record<string, string>>,
): boolean {
  return Object.entries(when).every(([feature, options]) => options.includes(chosen[feature] ?? ''));
}
