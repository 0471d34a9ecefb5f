import Fraction from 'fraction.js';
import { adjustedWinner } from './adjustedWinner.ts';
import {
  type Divided,
  envyIn,
  hasEqualGain,
  hasHighestSum,
  isEnvyFreeUpToOne,
  isProportional,
  wholeLots,
  worthToEach,
} from './divided.ts';
import { type Exact, nothing } from './exactMoney.ts';
import type { Estate } from './lots.ts';
import { maximin } from './maximin.ts';
import { sealedBids } from './sealedBids.ts';

export const divisionMethods = ['sealed-bids', 'adjusted-winner', 'maximin'] as const;
export type DivisionMethod = (typeof divisionMethods)[number];

export const divisionProperties = [
  'proportional',
  'envy-free',
  'envy-free-up-to-one',
  'equal-gain',
  'efficient',
  'least-is-highest',
] as const;
export type DivisionProperty = (typeof divisionProperties)[number];

/** A division with what is true of it. */
export type EstateDivision = Divided & {
  worth: Exact[][];
  envy: { heir: number; of: number; by: Exact }[];
  /** What holds of this division: reckoned, but for efficiency and the highest least, which follow from the method. */
  holds: DivisionProperty[];
  surplus?: Exact;
  split?: { lot: number; givenUp: Exact };
  ties?: number[];
  tentative?: readonly Exact[];
  /** False where the search for the highest least was stopped before it was proved. */
  proved: boolean;
};

/** Which properties a method guarantees whatever the bids, where all heirs tell what things are worth to them. */
export const guarantees: Readonly<Record<DivisionMethod, readonly DivisionProperty[]>> = {
  'sealed-bids': ['proportional', 'equal-gain', 'efficient'],
  'adjusted-winner': ['proportional', 'envy-free', 'envy-free-up-to-one', 'equal-gain', 'efficient'],
  maximin: ['efficient', 'least-is-highest'],
};

/**
 * Divides an estate by one of three methods, and says what holds of the outcome.
 *
 * @source properties: Brams and Taylor, Fair Division (1996), from memory; they are reckoned anew for each outcome where they can be
 */
export function divideEstate(estate: Estate, method: DivisionMethod): EstateDivision {
  const outcome = outcomeOf(estate, method);
  const worth = worthToEach(estate, outcome);
  const envy = envyIn(worth);
  const checks: Record<DivisionProperty, boolean> = {
    proportional: isProportional(estate, worth),
    'envy-free': envy.length === 0,
    'envy-free-up-to-one': isEnvyFreeUpToOne(estate, outcome),
    'equal-gain': hasEqualGain(estate, worth),
    efficient: method === 'sealed-bids' ? hasHighestSum(estate, outcome) : outcome.proved,
    'least-is-highest': method === 'maximin' && outcome.proved,
  };
  return { ...outcome, worth, envy, holds: divisionProperties.filter((property) => checks[property]) };
}

type Outcome = Omit<EstateDivision, 'worth' | 'envy' | 'holds'>;

function outcomeOf(estate: Estate, method: DivisionMethod): Outcome {
  const noMoney = estate.heirs.map(() => nothing);
  if (method === 'sealed-bids') {
    const { holder, payments, surplus } = sealedBids(estate);
    return { share: wholeLots(estate, holder), payments, surplus, proved: true };
  }
  if (method === 'maximin') {
    const { holder, proved } = maximin(estate);
    return { share: wholeLots(estate, holder), payments: noMoney, proved };
  }
  const { firstShare, ties, tentative, split } = adjustedWinner(estate);
  const share = [firstShare, firstShare.map((each) => new Fraction(1).sub(each))];
  return {
    share,
    payments: noMoney,
    ties,
    tentative,
    proved: true,
    ...(split === undefined ? {} : { split }),
  };
}
