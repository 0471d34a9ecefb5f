import type { Purpose } from '../piece/engagement.ts';
import type { Piece } from '../piece/piece.ts';
import { statesWorth } from './lacksForWorth.ts';

/** Something a use asks the examiner to state. “None” and “not known” are answers; blank is not. */
export type AskedItem = {
  /** Its place among `engagement.answers`; never renamed. */
  id: string;
  /** As it is asked, and as it is printed. */
  asks: string;
  note?: string;
  /** A day, kept as one, so that it can be held against the others. */
  day?: true;
  /** What the examiner declares of themselves: printed above the signature. */
  declares?: true;
  /** Where to look up whether it is asked for, and in which words. */
  check: string;
};

/**
 * What the intended use asks for besides what every opinion states, and what any stated worth asks for; in the order asked.
 *
 * @source the checklists behind this: USPAP Standards 7 and 8 (2006 to 2018 editions, read in part), IRS Publication 561 (January 2023, page 10, read),
 *   Director's Order 210 (its opening read), 26 CFR 20.2031-6 (read). Damage, division, sale, purchase and court: common practice.
 *   So each item names what it is checked against, and none of it is printed as law.
 */
export function askedOf(piece: Pick<Piece, 'engagement' | 'worth' | 'comparables'>): AskedItem[] {
  const { purpose } = piece.engagement;
  const ofUse = purpose === undefined ? [] : askedByUse[purpose];
  return [...ofUse, ...(statesWorth(piece) && purpose !== 'curiosity' ? askedOfWorth : [])];
}

/** The items whose answer is blank. */
export function unanswered(piece: Pick<Piece, 'engagement' | 'worth' | 'comparables'>): AskedItem[] {
  return askedOf(piece).filter(({ id }) => (piece.engagement.answers[id] ?? '').trim() === '');
}

/** How an item is asked, by its id; the id where no use asks for it any more. */
export function askedWords(id: string): string {
  const all = [...Object.values(askedByUse).flat(), ...askedOfWorth];
  return all.find((item) => item.id === id)?.asks ?? id;
}

const uspap = 'the current edition of the appraisal standards you certify to (USPAP, Standards 7 and 8)';
const donationRule = '26 CFR 1.170A-17; IRS Publication 561';
const wildlifeRule = 'Director’s Order 210 of the Fish and Wildlife Service, with its appendix on appraisals';

const giftDay: AskedItem = {
  id: 'giftOn',
  asks: 'Day of the gift',
  note: 'Or the day it is expected.',
  day: true,
  check: donationRule,
};
const acquired: AskedItem = {
  id: 'acquired',
  asks: 'When, how and for how much the owner came by it',
  check: `${donationRule}; the owner’s papers`,
};

/** What is stated of the appraiser and the piece wherever a worth is. */
const askedOfWorth: readonly AskedItem[] = [
  {
    id: 'interestValued',
    asks: 'What is valued',
    note: 'The whole title, or which share of it.',
    check: uspap,
  },
  {
    id: 'ownSales',
    asks: 'Earlier sales of the piece itself, and offers for it',
    note: 'What is known of them; none is an answer.',
    check: uspap,
  },
  {
    id: 'earlierServices',
    asks: 'Your earlier services on this piece',
    note: 'In the last three years, in whatever role; none is an answer.',
    declares: true,
    check: uspap,
  },
  {
    id: 'assistance',
    asks: 'Who gave significant help',
    note: 'By name, and with what; nobody is an answer.',
    declares: true,
    check: uspap,
  },
  {
    id: 'feeRests',
    asks: 'What your fee depends on',
    note: 'Not on the worth, nor on what follows from it.',
    declares: true,
    check: uspap,
  },
];

/** What each intended use asks for besides. */
export const askedByUse: Record<Purpose, readonly AskedItem[]> = {
  curiosity: [],
  insurance: [
    {
      id: 'policy',
      asks: 'What the policy says of the value',
      note: 'Its own words, with the page; or that it says nothing.',
      check: 'the policy, or the insurer',
    },
  ],
  estate: [
    { id: 'diedOn', asks: 'Day of death', day: true, check: 'the death certificate; 26 CFR 20.2031-1' },
    {
      id: 'alternateDate',
      asks: 'Whether another valuation date is elected',
      note: 'No, or which.',
      check: 'the executor’s counsel; Internal Revenue Code, section 2032',
    },
    {
      id: 'oath',
      asks: 'Whether the appraisal has to be under oath',
      note: 'No, or in which words.',
      declares: true,
      check: '26 CFR 20.2031-6(b); the executor’s counsel',
    },
  ],
  gift: [
    { ...giftDay, check: 'the donor’s counsel; 26 CFR 25.2512-1' },
    { id: 'donee', asks: 'Who receives it, and how they are related', check: 'the donor’s counsel' },
    { ...acquired, check: 'the donor’s papers' },
  ],
  donation: [
    giftDay,
    { id: 'donee', asks: 'Who receives it', check: donationRule },
    acquired,
    {
      id: 'agreement',
      asks: 'Agreements on its use, sale or naming',
      note: 'The terms; none is an answer.',
      check: donationRule,
    },
    {
      id: 'likeItems',
      asks: 'Like items given this year',
      note: 'To any charity; none is an answer.',
      check: 'Internal Revenue Code, section 170(f)(11)',
    },
    {
      id: 'preparedFor',
      asks: 'Statement of what the appraisal was prepared for',
      note: 'In the words the regulation asks for.',
      declares: true,
      check: donationRule,
    },
    {
      id: 'independence',
      asks: 'That you are not among those excluded',
      note: 'Neither donor, donee, seller to the donor, nor employed by or related to one.',
      declares: true,
      check: '26 CFR 1.170A-17(b)',
    },
    {
      id: 'declaration',
      asks: 'The declaration the regulation prescribes',
      note: 'Copy its words from the regulation as it stands today.',
      declares: true,
      check: '26 CFR 1.170A-17(a)',
    },
  ],
  division: [
    {
      id: 'valueAgreed',
      asks: 'What the will or the heirs’ agreement says of the value',
      note: 'Its words; or that there is neither.',
      check: 'the will, the agreement, the executor',
    },
  ],
  sale: [
    {
      id: 'restrictions',
      asks: 'What restricts its sale',
      note: 'Liens, shared title, protected materials, export; none known is an answer.',
      check: 'the seller’s counsel; the wildlife authority',
    },
  ],
  purchase: [
    {
      id: 'offer',
      asks: 'What it is offered as, by whom, at what price',
      check: 'the seller’s own words, in writing',
    },
  ],
  damage: [
    {
      id: 'lossOn',
      asks: 'Day of the damage or loss',
      note: 'Or between which days.',
      check: 'the owner’s or the carrier’s report',
    },
    {
      id: 'lossCause',
      asks: 'How it came about, as told and by whom',
      check: 'the report; you were not there',
    },
    {
      id: 'conditionBefore',
      asks: 'Its condition before, and what that is known by',
      note: 'Photographs, an earlier report, words of the owner.',
      check: 'papers from before the day',
    },
    {
      id: 'repair',
      asks: 'What repair is proposed, by whom, at what cost',
      note: 'From a conservator, in writing; none is an answer.',
      check: 'the conservator’s estimate',
    },
    {
      id: 'policy',
      asks: 'What the policy or contract says of the loss in value',
      note: 'Its own words; or that there is none.',
      check: 'the policy or contract of carriage',
    },
  ],
  wildlife: [
    {
      id: 'species',
      asks: 'Each protected material: where it is and how it was told',
      note: 'Say where the species could not be told; none is an answer.',
      check: `${wildlifeRule}; a laboratory where the species matters`,
    },
    {
      id: 'ageGrounds',
      asks: 'On what the age rests',
      note: 'The findings, and how far back they reach for certain.',
      check: `16 USC 1539(h); ${wildlifeRule}`,
    },
    {
      id: 'repairsSince1973',
      asks: 'Repairs or changes with such a material since December 27, 1973',
      note: 'None found is an answer; say what could not be seen.',
      check: '16 USC 1539(h)',
    },
    {
      id: 'amount',
      asks: 'How much of it there is',
      note: 'By weight or volume, and how it was estimated.',
      check: '50 CFR 17.40(e)',
    },
    {
      id: 'entered',
      asks: 'When, where and how it came into the country',
      note: 'Or that it was made here, or that it is not known.',
      check: wildlifeRule,
    },
    acquired,
    {
      id: 'independence',
      asks: 'That you have no part in the transaction',
      note: 'Neither buyer, seller, importer, exporter, agent, nor employed by or related to one; no gain but the fee.',
      declares: true,
      check: wildlifeRule,
    },
  ],
  court: [
    {
      id: 'courtAsks',
      asks: 'The question of the court or of counsel, in their words',
      check: 'the order, or counsel’s letter',
    },
    {
      id: 'reliedOn',
      asks: 'Papers and statements relied on',
      note: 'Each with its date; none is an answer.',
      check: 'the rules of that court',
    },
    {
      id: 'otherOpinions',
      asks: 'Opinions of others on this piece, and your answer to them',
      note: 'None known is an answer.',
      check: 'the rules of that court',
    },
    {
      id: 'earlierServices',
      asks: 'Your earlier work for either side',
      note: 'None is an answer.',
      declares: true,
      check: 'the rules of that court',
    },
    {
      id: 'declaration',
      asks: 'The declaration the court asks of an expert',
      note: 'In its own words.',
      declares: true,
      check: 'the rules of that court',
    },
  ],
};
