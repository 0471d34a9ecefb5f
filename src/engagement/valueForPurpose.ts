import type { Purpose } from '../piece/engagement.ts';

/** What value an intended use usually asks for: a proposal to take over or to reword, with what to check it against. */
export type ValueForPurpose = {
  definition: string;
  /** Where the definition was read; empty where it was not, so that the examiner looks it up. */
  definitionFrom: string;
  market: string;
  /** The day the value is for. */
  day: string;
  check: string;
};

const fairMarket =
  'Fair market value: the price at which the piece would change hands between a willing buyer and a willing seller, neither being compelled to buy or to sell, and both having reasonable knowledge of the facts.';
const publicMarket =
  'The market in which such pieces are most commonly sold to the public, the place taken into account; where that is auction, hammer price with the buyer’s premium.';

/**
 * Which value an intended use usually asks for; none where an opinion for it needs no value: to know what a piece is, and for wildlife law,
 * which asks for age and materials.
 *
 * The federal definition was read as courts quote it (Bank One, 120 T.C. 174; Trompeter, T.C. Memo. 2004-27), and that the buyer's premium counts as
 * Trompeter follows Scull (T.C. Memo. 1994-211). All else is common practice. What can be taken over into the document names a text only where it was read.
 */
export const valueForPurpose: Partial<Record<Purpose, ValueForPurpose>> = {
  insurance: {
    definition:
      'Replacement value: what it would cost to replace the piece with a comparable one within a reasonable time.',
    definitionFrom: 'Common practice; the words of the policy come first',
    market: 'The retail market in which the owner would look for another.',
    day: 'The day of the inventory, unless the policy names another.',
    check: 'the policy, and the insurer’s own definition',
  },
  estate: {
    definition: fairMarket,
    definitionFrom: '26 CFR 20.2031-1(b)',
    market: publicMarket,
    day: 'The day of death, or the alternate date where one is elected.',
    check: '26 CFR 20.2031-1(b) and 20.2031-6; for the alternate date the executor’s counsel',
  },
  gift: {
    definition: fairMarket,
    definitionFrom: '26 CFR 25.2512-1',
    market: publicMarket,
    day: 'The day of the gift.',
    check: '26 CFR 25.2512-1; the donor’s counsel, for whether a return is due',
  },
  donation: {
    definition: fairMarket,
    definitionFrom: '',
    market: publicMarket,
    day: 'The day of the gift; where the appraisal is signed before it, a day no earlier than 60 days before.',
    check:
      '26 CFR 1.170A-1 for the paragraph that defines it, to be named in the document, and 1.170A-17; IRS Publication 561',
  },
  division: {
    definition:
      'The value the heirs agree to divide by: what the piece would bring each of them if it were sold, unless they or the will say otherwise.',
    definitionFrom: 'An agreement of the heirs, or the will; common practice',
    market: 'The market in which the heirs could sell; one and the same for every piece.',
    day: 'One day for every piece, agreed beforehand.',
    check: 'the will, the heirs’ agreement, and local law',
  },
  sale: {
    definition:
      'Marketable cash value: what the seller would have in hand after commission and costs, in the market chosen.',
    definitionFrom: 'Common practice',
    market: 'The market it will be offered in; hammer price less commission at auction.',
    day: 'The day of the opinion, or of the sale that is planned.',
    check: 'the terms of the auction house or dealer',
  },
  purchase: {
    definition:
      'What a comparable piece costs a buyer in the market this one is offered in, premium and tax told apart.',
    definitionFrom: 'Common practice',
    market: 'The market it is offered in.',
    day: 'The day of the opinion.',
    check: 'the terms of the seller',
  },
  damage: {
    definition:
      'Loss in value: what the piece was worth as it stood just before, less what it is worth damaged, or repaired where it is to be repaired; the cost of the repair told apart.',
    definitionFrom: 'Common practice; the words of the policy or contract come first',
    market: 'The market in which the owner would sell or replace it, the same before and after.',
    day: 'The day of the damage or loss, for both values.',
    check: 'the policy or the contract of carriage, and the adjuster',
  },
  court: {
    definition: '',
    definitionFrom: 'The order of the court, or counsel',
    market: '',
    day: 'The day the court names.',
    check: 'the order, or counsel: the court’s definition goes before any other',
  },
};
