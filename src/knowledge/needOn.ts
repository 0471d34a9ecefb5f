import type { Form, Sign } from './schema.ts';

/** What looking asks for on one part: what its sign asks for, or the easier thing that does on such a part. */
export type NeedOn = Sign['needs'] | 'pulled-out' | 'opened' | 'from-behind';

/**
 * What looking for a sign asks for on a part of this kind. A sign that is found on many parts says what most of them
 * ask for; but nobody turns a sideboard over to see beneath a drawer, nor lifts the seat of a chest.
 *
 * @param need  what the sign asks for
 * @param kind  kind of part; left out for the piece as a whole
 * @source common practice
 */
export function needOn(
  need: Sign['needs'],
  kind: string | undefined,
  form: Pick<Form, 'family'> | undefined,
): NeedOn {
  const asked =
    need === 'seat-lifted' && form !== undefined && form.family !== 'seating' ? 'turned-over' : need;
  if (asked !== 'turned-over' || kind === undefined) return asked;
  if (/(^|-)drawer$/.test(kind)) return 'pulled-out';
  if (/(^|-)door$/.test(kind)) return 'opened';
  if (/(^|-)backboard$/.test(kind)) return 'from-behind';
  return asked;
}
