import { z } from 'zod';
import { findingState } from '../piece/finding.ts';
import { makingKind, readingId } from '../piece/readings.ts';

const share = z.number().min(0).max(1);
const interval = z.tuple([z.number(), z.number()]);
const findingRef = { sign: z.string(), part: z.string().nullable() };

/** A weight in decibans; null where a hard limit leaves nothing of a side. */
const decibansOrNone = z.number().nullable();

/** What one finding, or several together, do for the leading reading, all the others taken in. */
const inWhole = {
  /** Decibans for the leading reading against all the others together: the log odds with them less those without. */
  withinWhole: decibansOrNone,
  /** The same against the strongest rival. */
  againstRival: decibansOrNone,
  /** `withinWhole` by the printed scale; the limit’s words where there is none. */
  words: z.string(),
  /** Why there is no number: which side has nothing left, and the finding or claim that leaves it nothing. */
  limit: z
    .strictObject({ leavesNothingOf: z.enum(['leading', 'others', 'either']), words: z.string() })
    .optional(),
};

/** What findings can have in common: one event, what became of one part, or a cause that works on the piece as a whole. */
const causeKind = z.enum([
  'alteration',
  'part',
  'shop',
  'making',
  'tooling',
  'ageing',
  'use',
  'origin',
  'dating',
]);

/** One way a finding that jars could be explained. `share` is how probable the finding is under it, the rest taken in. */
const explanation = z.strictObject({
  kind: z.enum(['reading', 'shop', 'origin', 'alteration']),
  id: z.string(),
  words: z.string(),
  share,
});

/**
 * False where the knowledge of the form has no alteration that leads there, so that the answer was not considered at all and its
 * probability says nothing; left out for all others.
 */
const notConsidered = z.literal(false).optional();

const years = z.strictObject({
  p50: interval,
  p90: interval,
  density: z.array(z.tuple([z.number(), share])),
});

const firmness = z.strictObject({
  shareOfDraws: share.nullable(),
  draws: z.number().int(),
  why: z.string(),
});

/** What the findings say. Probabilities shown are never above 0.999 or below 0.001; `density` sums to 1 over 5-year bins. */
export const weighing = z.strictObject({
  readings: z.array(
    z.strictObject({ id: readingId, probability: share, low: share, high: share, considered: notConsidered }),
  ),
  leading: readingId,
  /**
   * True only if the leading reading leads in 95 of 100 redraws, has a probability of 0.95 and of 0.8 at the low end of their
   * middle 90 %, the piece was in the hand, and something explains the findings.
   */
  firm: z.boolean(),
  firmness,
  /** How the piece came to be, asked first: the readings of each answer together. Most probable first. */
  making: z.strictObject({
    answers: z.array(
      z.strictObject({
        id: makingKind,
        probability: share,
        low: share,
        high: share,
        considered: notConsidered,
      }),
    ),
    leading: makingKind,
    firm: z.boolean(),
    firmness,
  }),
  /**
   * Its condition, asked second: how probable each is if the piece is of the period; of the parts looked at, how many are
   * called original; of those not looked at, how many are to be expected later.
   */
  condition: z.strictObject({
    ifOfThePeriod: z.array(z.strictObject({ id: readingId, share })),
    seen: z.strictObject({ parts: z.number().int(), original: z.number().int() }),
    unseen: z.strictObject({ parts: z.number().int(), laterExpected: z.number() }),
  }),
  /**
   * Where a place was claimed: for a piece of the period, the share that is of a listed shop of that place, of another listed one, and
   * of none; and how probable it is that the piece is of the period with the claim, and had none been made.
   */
  place: z
    .strictObject({
      claimed: z.string(),
      known: z.boolean(),
      ifOfThePeriod: z.strictObject({ there: share, elsewhere: share, unlisted: share }),
      ofThePeriod: z.strictObject({ asClaimed: share, noneClaimed: share }),
    })
    .optional(),
  /** How probable it is that none of the readings is what happened, and whether that is enough to be said. */
  unexplained: z.strictObject({ unexplained: z.boolean(), probability: share, reason: z.string() }),
  years: years.extend({ binding: z.array(z.strictObject({ ...findingRef, end: z.enum(['from', 'to']) })) }),
  parts: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      origin: z.record(z.string(), share),
      /** What the part is called; `not-looked-at` where no sign on it was answered, whatever the rest of the piece suggests. */
      standing: z.enum(['of-the-making', 'repair', 'improve', 'other-old', 'unsure', 'not-looked-at']),
      words: z.string(),
      years: years,
      /** How many findings on it carry weight. */
      looked: z.number().int(),
    }),
  ),
  alterations: z.array(z.strictObject({ id: z.string(), name: z.string(), probability: share })),
  shops: z.array(z.strictObject({ id: z.string(), name: z.string(), probability: share })),
  /** The most probable reading but one. */
  rival: readingId,
  weights: z.array(
    z.strictObject({
      ...findingRef,
      state: findingState,
      /** True where it was measured: then `state` says only which side the measurement favors. */
      measured: z.boolean().optional(),
      /** Decibans for the leading reading against all the others together, by itself. */
      alone: decibansOrNone,
      ...inWhole,
      /** For a habit of a shop that may well have made the piece: `periodAgainstLater.withinWhole`, if no shop file were known. */
      withoutShopFiles: z.number().optional(),
      /** Decibans for a period piece (altered or not) against any later one. */
      periodAgainstLater: z.strictObject({ alone: decibansOrNone, withinWhole: decibansOrNone }),
    }),
  ),
  /**
   * Findings that share one cause, two or more, weighed together; each finding is of one cause at most. The weightiest first.
   * `id` is that of the alteration, part or shop, or of the cause within the whole piece.
   */
  reasonGroups: z.array(
    z.strictObject({
      cause: z.strictObject({ kind: causeKind, id: z.string(), name: z.string() }),
      findings: z.array(z.strictObject(findingRef)),
      ...inWhole,
    }),
  ),
  /** The examiner's own observations, and that the piece was looked over: what each does within the whole. */
  observations: z.array(z.strictObject({ id: z.string(), ...inWhole })),
  /** All findings together, without the observations: what they do for the leading reading from the starting odds on. */
  altogether: z.strictObject({
    ...inWhole,
    /** The same for a period piece (altered or not) against any later one; one put together from old parts stands on no side. */
    periodAgainstLater: decibansOrNone,
  }),
  contradictions: z.array(
    z.strictObject({
      ...findingRef,
      state: findingState,
      /** How probable the finding is under the leading reading, all else taken in. */
      share,
      question: z.string(),
      /** True where it was measured: then `share` is in proportion to where the measurement fits best. */
      measured: z.boolean().optional(),
      /** True where a shop file, a part's origin or an alteration already weighed in explains it. */
      explained: z.boolean(),
      explanations: z.array(explanation),
    }),
  ),
  nextLooks: z.array(
    z.strictObject({
      ...findingRef,
      bits: z.number(),
      minutes: z.number(),
      needs: z.string(),
      caution: z.string().optional(),
    }),
  ),
  /**
   * Where the case tells the minutes left: what to look at in them, in order, by a greedy choice of most bits to the minute.
   * The bits are those of each look by itself.
   */
  plan: z.array(z.strictObject({ ...findingRef, bits: z.number(), minutesGone: z.number() })).optional(),
  /** Smallest sets of findings that would put another reading first; `otherwise` says how each would have come out. */
  wouldChange: z.array(
    z.strictObject({
      findings: z.array(z.strictObject({ ...findingRef, otherwise: z.string() })),
      to: readingId,
    }),
  ),
  /** What was tried for it, in words, where no set was found; empty where one was, or where it was left out. */
  wouldChangeTried: z.string(),
  /** How the leading reading's probability moves with the starting odds. */
  byStartingOdds: z.array(
    z.strictObject({ odds: z.string(), leading: readingId, probabilities: z.record(readingId, share) }),
  ),
  /** The figures the leading reading hangs on most: how far its probability moves over the figure's range. */
  sensitivity: z.array(z.strictObject({ figure: z.string(), low: share, high: share })),
  logEvidence: z.number(),
  ignored: z.array(z.strictObject({ ...findingRef, why: z.string() })),
  versions: z.strictObject({ knowledge: z.string(), seed: z.number().int(), draws: z.number().int() }),
});
export type Weighing = z.infer<typeof weighing>;
export type PartStanding = Weighing['parts'][number];
