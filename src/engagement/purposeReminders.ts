import type { Purpose } from '../piece/engagement.ts';

/** A rule of law that bears on what an opinion is wanted for: a reminder, with where it stands so that it can be checked. */
export type Reminder = {
  says: string;
  check: string;
  /** Whether its text was read. What was not stands on screen, for the examiner to check, and in no document. */
  read: boolean;
};

const antiqueException: Reminder = {
  says: 'United States: a piece with a part of a species protected by the Endangered Species Act is exempt as an antique only where it is 100 years old or more, has not been repaired or changed with such a species after December 27, 1973, and came in through a port named for antiques (less strict for pieces made in the United States or brought in before 1982). Whoever claims the exemption has to prove it. CITES papers are asked for besides, and some states go further. Read in part only.',
  check: '16 USC 1539(h); Director’s Order 210 of the Fish and Wildlife Service; the state’s wildlife agency',
  read: false,
};

const ivory: Reminder = {
  says: 'United States: African elephant ivory may be sold across state lines only in a few cases, one of them less than 200 g of it fixed in a larger old piece with all other conditions met; some states forbid more. Read in part only.',
  check: '50 CFR 17.40(e); the state’s wildlife agency',
  read: false,
};

/**
 * What United States law may ask where an opinion feeds into a gift, an estate, a sale or a question of wildlife law; nothing for other uses.
 *
 * The figures of donations were read in Publication 561 (revised January 2023) and in the regulation as it was quoted there, those of estates in
 * 26 CFR 20.2031-6 (print of 2007); the rules on protected species were read in part only, through others. So each is worded as a reminder and
 * names what to look up.
 */
export const purposeReminders: Partial<Record<Purpose, readonly Reminder[]>> = {
  donation: [
    {
      says: 'United States: a deduction of more than $5,000 (like items given in one year count together) needs a qualified appraisal and Form 8283, Section B, signed by appraiser and donee. An appraisal signed before the gift must be dated, and must value the piece as of a day, no earlier than 60 days before the gift; one signed on or after the gift values it as of the day of the gift.',
      check:
        '26 CFR 1.170A-16 and 1.170A-17; IRS Publication 561; the current Form 8283 with its instructions',
      read: true,
    },
    {
      says: 'Art of $20,000 or more: the whole signed appraisal is attached to the return, with a picture of each item.',
      check: 'the current instructions of Form 8283',
      read: true,
    },
    {
      says: 'Whether antiques count as art for that was not read; it is usual to take it that they do.',
      check: 'the current instructions of Form 8283',
      read: false,
    },
    {
      says: 'The appraiser’s name, address, taxpayer number and qualifications belong in the appraisal, and no fee may be a share of the value.',
      check: '26 CFR 1.170A-17',
      read: true,
    },
    {
      says: 'An opinion without a worth states no value, so it is not the qualified appraisal; one with a worth is so only if its appraiser and its wording are what the regulation asks for.',
      check: 'the donor’s own tax adviser',
      read: true,
    },
  ],
  estate: [
    {
      says: 'United States: household effects are listed room by room, each article named with its value; where those of marked artistic or intrinsic value (antiques among them) come to more than $3,000 in all, an expert appraisal under oath goes with the return.',
      check: '26 CFR 20.2031-6; the executor’s counsel',
      read: true,
    },
    {
      says: 'The alternate valuation date is said to be six months after the death.',
      check: 'Internal Revenue Code, section 2032; the executor’s counsel',
      read: false,
    },
  ],
  gift: [
    {
      says: 'Whether a gift tax return is due, and what has to go with it, hangs on the sum and the year.',
      check: 'the current instructions of Form 709; the donor’s counsel',
      read: false,
    },
  ],
  wildlife: [antiqueException, ivory],
  sale: [antiqueException, ivory],
};

/** The reminders for a purpose as sentences for the examiner, each with what to check it against. */
export function reminderSentences(purpose: Purpose | undefined): string[] {
  return remindersOf(purpose).map(sentence);
}

/** Those of them that may stand in a document: only what was read. */
export function printedReminders(purpose: Purpose | undefined): string[] {
  return remindersOf(purpose)
    .filter(({ read }) => read)
    .map(sentence);
}

function remindersOf(purpose: Purpose | undefined): readonly Reminder[] {
  return purpose === undefined ? [] : (purposeReminders[purpose] ?? []);
}

function sentence({ says, check }: Reminder): string {
  return `${says} Check: ${check}.`;
}
