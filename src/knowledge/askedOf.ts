import { canApply, type KnownOfPiece } from './canApply.ts';
import type { Form, Sign } from './schema.ts';

/**
 * True if a sign is asked of a kind of part of a form: it can be on such a part, it is asked of such furniture and of this form, and
 * where it tells of an alteration the form is prone to it.
 *
 * @param part   its kind or `whole`; with its id too where something may have been said of the part itself
 * @param known  what is known of the piece; without it every choice of the form is open
 */
export function askedOf(
  sign: Pick<Sign, 'on' | 'formFamilies' | 'notForms' | 'hangsOn' | 'when' | 'make'>,
  part: string | { id: string; kind: string },
  form: Pick<Form, 'id' | 'family' | 'alterations' | 'features' | 'makes'>,
  known?: KnownOfPiece,
): boolean {
  const asked = typeof part === 'string' ? { kind: part } : part;
  const alteration = /^alteration\/(.+)$/.exec(sign.hangsOn)?.[1];
  return (
    sign.on.includes(asked.kind) &&
    (sign.formFamilies?.includes(form.family) ?? true) &&
    !(sign.notForms?.includes(form.id) ?? false) &&
    (alteration === undefined || form.alterations.includes(alteration)) &&
    (known === undefined || canApply(sign, asked, form, known))
  );
}
