import type { Purpose } from './engagement.ts';

/** A rule of law that bears on what an opinion is wanted for: a reminder, with where it stands so that it can be checked. */
export type Reminder = { says: string; check: string };

/**
 * What United States law may ask where an opinion feeds into a gift or a sale; nothing for other purposes.
 *
 * The figures were read in Publication 561 (revised January 2023) and in the regulation as it was quoted there; the rule
 * on antiques of protected species was read in part only. So each is worded as a reminder and names what to look up.
 */
export const purposeReminders: Partial<Record<Purpose, readonly Reminder[]>> = {
  donation: [
    {
      says: 'United States: a deduction of more than $5,000 (like items given in one year count together) needs a qualified appraisal and Form 8283, Section B, signed by appraiser and donee. An appraisal signed before the gift must be dated, and must value the piece as of a day, no earlier than 60 days before the gift; one signed on or after the gift values it as of the day of the gift.',
      check:
        '26 CFR 1.170A-16 and 1.170A-17; IRS Publication 561; the current Form 8283 with its instructions',
    },
    {
      says: 'Art of $20,000 or more: the whole signed appraisal is attached to the return, with a picture of each item. That the instructions count antiques as art was not verified.',
      check: 'the current instructions of Form 8283',
    },
    {
      says: 'An opinion without a worth states no value, so it is not the qualified appraisal; one with a worth is so only if its appraiser and its wording are what the regulation asks for.',
      check: 'the donor’s own tax adviser',
    },
  ],
  sale: [
    {
      says: 'United States: a piece with a part of a species protected by the Endangered Species Act is exempt as an antique only where it is 100 years old or more, has not been repaired or changed with such a species after December 27, 1973, and came in through a port named for antiques (less strict for pieces made in the United States or brought in before 1982). Whoever claims the exemption has to prove it. CITES papers are asked for besides, and some states go further. Read in part only.',
      check:
        '16 USC 1539(h); Director’s Order 210 of the Fish and Wildlife Service; the state’s wildlife agency',
    },
  ],
};

/** The reminders for a purpose as sentences, each with what to check it against. */
export function reminderSentences(purpose: Purpose | undefined): string[] {
  const reminders = purpose === undefined ? [] : (purposeReminders[purpose] ?? []);
  return reminders.map(({ says, check }) => `${says} Check: ${check}.`);
}
