import type { Form, Sign } from './schema.ts';

/**
 * True if a sign is asked of a kind of part of a form: it can be on such a part, it is asked of such furniture and of this form, and
 * where it tells of an alteration the form is prone to it.
 *
 * @param kind  kind of part, or `whole`
 */
export function askedOf(
  sign: Pick<Sign, 'on' | 'formFamilies' | 'notForms' | 'hangsOn'>,
  kind: string,
  form: Pick<Form, 'id' | 'family' | 'alterations'>,
): boolean {
  const alteration = /^alteration\/(.+)$/.exec(sign.hangsOn)?.[1];
  return (
    sign.on.includes(kind) &&
    (sign.formFamilies?.includes(form.family) ?? true) &&
    !(sign.notForms?.includes(form.id) ?? false) &&
    (alteration === undefined || form.alterations.includes(alteration))
  );
}
