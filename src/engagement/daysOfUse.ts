import type { Engagement } from '../piece/engagement.ts';
import { dayWords } from '../units/days.ts';

/**
 * Where the days of the engagement do not go together with the intended use: sentences for the examiner to check, none where they do or
 * where a day is blank. Nothing is decided here.
 *
 * @source donations: IRS Publication 561 (January 2023), page 10; estates: the day of death by 26 CFR 20.2031-1(b); gifts: 26 CFR 25.2512-1
 */
export function daysOfUse({
  purpose,
  effectiveOn,
  answers,
}: Pick<Engagement, 'purpose' | 'effectiveOn' | 'answers'>): string[] {
  if (effectiveOn === undefined) return [];
  const [giftOn, diedOn] = [isDay(answers.giftOn), isDay(answers.diedOn)];
  if (purpose === 'donation' && giftOn !== undefined) {
    if (effectiveOn > giftOn)
      return [
        `The effective date is after the gift of ${dayWords(giftOn)}: an appraisal for it values the piece as of that day or before.`,
      ];
    if (daysBetween(effectiveOn, giftOn) > 60)
      return [
        `The effective date is ${daysBetween(effectiveOn, giftOn)} days before the gift of ${dayWords(giftOn)}; it may be 60 at most. One signed on or after the gift values the piece as of that very day.`,
      ];
    return [];
  }
  if (purpose === 'gift' && giftOn !== undefined && effectiveOn !== giftOn)
    return [
      `The effective date is not the day of the gift, ${dayWords(giftOn)}: a gift is valued as of the day it is made.`,
    ];
  const noneElected = /^(no|none|not elected)\b/i.test((answers.alternateDate ?? '').trim());
  if (purpose === 'estate' && diedOn !== undefined && noneElected && effectiveOn !== diedOn)
    return [`The effective date is not the day of death, ${dayWords(diedOn)}, and no other date is elected.`];
  return [];
}

function isDay(text: string | undefined): string | undefined {
  return text !== undefined && /^\d{4}-\d{2}-\d{2}$/.test(text) ? text : undefined;
}

/** Days from one day to a later one. */
function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from);
}

/** The days since the year 0 of the Gregorian calendar. */
function dayNumber(day: string): number {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  // Years begin in March, so that a leap day stands at the end of one.
  const [y, m] = month > 2 ? [year, month - 3] : [year - 1, month + 9];
  return (
    365 * y +
    Math.floor(y / 4) -
    Math.floor(y / 100) +
    Math.floor(y / 400) +
    Math.floor((153 * m + 2) / 5) +
    date -
    1
  );
}
