import { formatYears, type YearSpan } from '../units/years.ts';
import type { Holding } from './holding.ts';

export const impossibleKinds = [
  'dates-backwards',
  'owned-before-made',
  'before-birth',
  'after-death',
  'firm-not-yet',
  'firm-no-more',
  'label-older-than-piece',
] as const;
export type ImpossibleKind = (typeof impossibleKinds)[number];

/** Something that can't have been as it is told, whatever the years that are left open. */
export type Impossible = { kind: ImpossibleKind; name: string; words: string };

/** What of one holding can't have been so. */
export function impossibleIn(holding: Holding, made: YearSpan | undefined): Impossible[] {
  const { name, lived, began, ended, role, labelled } = holding;
  const isFirm = role === 'dealer' || role === 'agent' || role === 'auction-house';
  const found: Impossible[] = [];
  const say = (kind: ImpossibleKind, words: string) => found.push({ kind, name, words });
  // The latest year in which the holding can have begun, the earliest in which it must still have lasted.
  const begun = began?.[1];
  const lasted = ended?.[0] ?? began?.[0];
  if (began !== undefined && ended !== undefined && ended[1] < began[0])
    say(
      'dates-backwards',
      `${name} is said to have had it until ${ended[1]}, and from ${began[0]}: the years run backwards.`,
    );
  if (made !== undefined && begun !== undefined && begun < made[0])
    say(
      'owned-before-made',
      `${name} is said to have had it by ${begun}, and by the findings it was made ${formatYears(made)}: another piece is meant, a date is wrong, or the piece is older than it reads.`,
    );
  if (lived.from !== undefined && begun !== undefined && begun < lived.from)
    isFirm
      ? say(
          'firm-not-yet',
          `${name} is said to have had it by ${begun}, and was not in business before ${lived.from}.`,
        )
      : say('before-birth', `${name} is said to have had it by ${begun}, and was born in ${lived.from}.`);
  if (lived.to !== undefined && lasted !== undefined && lasted > lived.to)
    isFirm
      ? say(
          'firm-no-more',
          `${name} is said to have had it in ${lasted}, and was in business until ${lived.to} only.`,
        )
      : say(
          'after-death',
          `${name} is said to have had it in ${lasted}, and died in ${lived.to}: if the estate held it on, enter the estate.`,
        );
  if (labelled && made !== undefined && lived.to !== undefined && lived.to < made[0])
    say(
      'label-older-than-piece',
      `A label of ${name} is on it, who was gone by ${lived.to}, and by the findings it was made ${formatYears(made)}: the label may come from another piece.`,
    );
  return found;
}
