import { z } from 'zod';
import { partMake } from '../piece/partMake.ts';
import type { Ask } from './askSchema.ts';
import type { ConsumerPrices } from './consumerPrices.ts';
import { id, sentence, year } from './entryWords.ts';
import { basis, counting, figure, figureOrText } from './figureSchema.ts';
import { pooling } from './judgedSchema.ts';
import type { Measurements } from './measurementSchema.ts';
import type { NotDrawn } from './notDrawnSchema.ts';
import type { SignDrawing } from './signDrawingSchema.ts';
import { standardTerm } from './standardTermSchema.ts';
import { whoWorked } from './whoWorkedSchema.ts';
import type { Wood, WoodMovement } from './woodSchema.ts';
import type { Work } from './workSchema.ts';

/**
 * The shape of the knowledge files. This is the one truth for them: types are inferred from it, and the JSON
 * Schema for editors and the reference pages are made from it.
 */

/** When a technique or material came and went: shares rise from earliest to commonFrom, fall from commonUntil to latest. */
export const span = z.strictObject({
  earliest: year,
  /** Until then at most one in twenty of what is usual later shows it: a patent is no use. */
  rareUntil: year.optional(),
  commonFrom: year,
  commonUntil: year.optional(),
  latest: year.optional(),
  /** True only where a published floor exists (patent, law, first recorded making): nothing can show it before. */
  hardFloor: z.boolean().default(false),
  source: id.optional(),
  at: z.string().optional(),
  by: z.enum(['common practice', 'judgement', 'from memory']).optional(),
});
export type Span = z.infer<typeof span>;

/** The one unknown a sign hangs on. */
export const causes = ['making', 'year', 'part-year', 'origin', 'tooling', 'ageing', 'use'] as const;
export const cause = z.union([z.enum(causes), z.templateLiteral(['alteration/', id])]);
export type Cause = z.infer<typeof cause>;

/** The states a sign of each cause must give a figure for (`later` may be left out: bench-copy stands in). */
export const causeStates: Record<string, readonly string[]> = {
  making: ['period', 'bench-copy', 'machine-copy', 'to-deceive'],
  origin: ['of-the-making', 'repair', 'improve', 'other-old'],
  tooling: ['hand', 'early-machine', 'modern-machine'],
  ageing: ['natural', 'none', 'imitated'],
  use: ['natural', 'none', 'imitated'],
  alteration: ['happened', 'not'],
  'part-year': ['in-use', 'out-of-use'],
  year: ['in-use', 'out-of-use'],
};

/** The families of furniture. */
export const formFamily = z.enum(['seating', 'case', 'table', 'bed', 'clock', 'glass']);

/** What looking for a sign asks for. */
export const need = z.enum([
  'nothing',
  'turned-over',
  'seat-lifted',
  'part-removed',
  'owners-leave',
  'laboratory',
]);

/** Something that can be seen on a part and tells of its history. */
export const sign = z.strictObject({
  id,
  name: z.string().min(3),
  /** What to look for, and how. */
  look: sentence,
  /** Ids of signs it is taken for, or words. */
  mistakenFor: z.array(z.string()).default([]),
  /** Kinds of part it can be on; `whole` is the piece as a whole. */
  on: z.array(z.string()).min(1),
  /** Families of form it is asked of; every family when left out. */
  formFamilies: z.array(formFamily).min(1).optional(),
  /** Forms it is not asked of, though their parts are of its kinds. */
  notForms: z.array(id).min(1).optional(),
  /** Options of features it goes with: asked only of a piece that has one of them, where its form has the feature. */
  when: z.record(id, z.array(id).min(1)).optional(),
  /** How a part must be made to bear it: asked unless the part is known to be made otherwise. */
  make: partMake.optional(),
  hangsOn: cause,
  /** Signs that are near repeats of each other on one part share a group. */
  group: id.optional(),
  minutes: z.number().positive().max(120),
  needs: need.default('nothing'),
  /** What a photograph can show of it. */
  inPhoto: z.enum(['clear', 'hint', 'no']).default('hint'),
  /** Shown before the step that needs it. */
  caution: sentence.optional(),
  /** For `part-year` and `year`: when it was in use. `shows.in-use` is the share at its height, `out-of-use` outside it. */
  span: span.optional(),
  shows: z.record(z.string(), figureOrText),
  /** Where it may be a trace of what was done to the whole piece at one time: of 100 such parts the share that then shows it. */
  campaign: z.strictObject({ kind: id, shows: figureOrText }).optional(),
  basis: basis.optional(),
  sources: z.array(id).default([]),
});
export type Sign = z.infer<typeof sign>;

/** One family of signs: one file. */
export const signFile = z.strictObject({ family: id, name: z.string(), signs: z.array(sign).min(1) });

/** One part of a form. */
export const formPart = z.strictObject({
  id,
  kind: id,
  name: z.string(),
  /** A renewed structural part makes the piece a repaired one; a renewed caster or cover does not. */
  structural: z.boolean().default(true),
  /** Of 100 period pieces, in how many has this part been renewed in ordinary use. */
  renewed: figureOrText,
  /** Present only with these features of the piece. */
  when: z.record(z.string(), z.array(z.string())).default({}),
});
export type FormPart = z.infer<typeof formPart>;

/** One shape of a form's drawing: a part's outline in one view, its points in expressions over the measures. */
export const drawnShape = z.strictObject({
  part: id,
  view: z.enum(['front', 'side', 'back', 'inside', 'underside']),
  /** SVG-like path of commands with expressions: see docs/knowledge.md. */
  path: z.string(),
  when: z.record(z.string(), z.array(z.string())).default({}),
  mirror: z.boolean().default(false),
});

/** A kind of furniture: its parts, measures, drawing and the alterations it is prone to. */
/** By kind of part: what each is made like. */
const makesByKind = z.record(id, z.partialRecord(partMake, z.boolean()));

export const form = z.strictObject({
  id,
  name: z.string(),
  family: formFamily,
  /** Whose left and right its parts are named by: those of the person seated in it, or of the person facing it. */
  sides: z.enum(['seated', 'facing']),
  what: sentence,
  aat: standardTerm.optional(),
  /** Between which years pieces of this form were of the style, where the claim gives none. */
  styleSpan: z.tuple([year, year]),
  features: z
    .array(
      z.strictObject({
        id,
        name: z.string(),
        options: z
          .array(
            z.strictObject({
              id,
              name: z.string(),
              /** How the choice settles that kinds of part are made: turned legs are, straight ones are not. */
              makes: makesByKind.optional(),
            }),
          )
          .min(2),
      }),
    )
    .default([]),
  /** How kinds of its parts are made whatever is chosen. */
  makes: makesByKind.optional(),
  parts: z.array(formPart).min(2),
  alterations: z.array(id).default([]),
  measures: z.array(
    z.strictObject({
      id,
      name: z.string(),
      how: sentence,
      typicalMm: z.number().positive(),
      lowMm: z.number().positive(),
      highMm: z.number().positive(),
      /** Where another size than `typicalMm` is usual with certain features: the first that is met holds. */
      usual: z
        .array(z.strictObject({ when: z.record(z.string(), z.array(z.string())), mm: z.number().positive() }))
        .default([]),
      when: z.record(z.string(), z.array(z.string())).default({}),
    }),
  ),
  /** Lengths worked out from the measures, used in the drawing, in order. */
  lengths: z.record(z.string(), z.string()).default({}),
  /** Shapes drawn more than once, by name: a path over names given where it is called with `@name`. */
  shapes: z
    .record(z.string(), z.strictObject({ of: z.array(z.string()).default([]), path: z.string() }))
    .default({}),
  drawing: z.array(drawnShape),
  cautions: z.array(sentence).default([]),
  basis: basis.optional(),
  sources: z.array(id).default([]),
});
export type Form = z.infer<typeof form>;

/** What may have been done to a piece after it was made. */
export const alteration = z.strictObject({
  id,
  name: z.string(),
  what: sentence,
  /** upkeep leaves a piece intact; repair makes it repaired; improve altered; make-up made up of several. */
  class: z.enum(['upkeep', 'repair', 'improve', 'make-up']),
  /** Of 100 pieces of a form prone to it: period pieces, later copies (which had less time), and, if otherwise, fakes. */
  happened: z.strictObject({
    period: figureOrText,
    later: figureOrText,
    'to-deceive': figureOrText.optional(),
  }),
  /** Where it happened: of 100 parts of this kind, how many are then not of the making, and what they are. */
  changes: z
    .record(
      z.string(),
      figure.pick({ in100: true }).extend({ to: z.enum(['repair', 'improve', 'other-old']) }),
    )
    .default({}),
  earliest: year.optional(),
  /** Kinds of part without which it can’t have happened: a piece that has none of them is not prone to it. */
  needsPart: z.array(z.string()).optional(),
  honestContrast: sentence,
  tellOwner: sentence,
  desirability: sentence,
  basis: basis.optional(),
  sources: z.array(id).default([]),
});
export type Alteration = z.infer<typeof alteration>;

/** The habits of one workshop, school or region. */
export const shop = z.strictObject({
  id,
  name: z.string(),
  kind: z.enum(['workshop', 'region', 'guild']),
  /** True for the shops made up for the worked examples. */
  invented: z.boolean().default(false),
  place: z.string(),
  /** Words of a claimed place that make this shop likelier. */
  placeWords: z.array(z.string()).default([]),
  years: z.tuple([year, year]),
  forms: z.array(id).min(1),
  /** Of 100 period pieces of these forms and years, with no place claimed, how many come from here. */
  share: figureOrText,
  what: sentence,
  habits: z
    .array(z.strictObject({ sign: id, on: z.array(z.string()).optional(), shows: figureOrText }))
    .min(1),
  woods: z.string().default(''),
  /** Whose hands did the work, beside the one whose name it goes by. */
  whoWorked: whoWorked.optional(),
  basis: basis.optional(),
  sources: z.array(id).default([]),
});
export type Shop = z.infer<typeof shop>;

/** [year or age, weight or share 0–1] points of a line, years rising; straight between, level outside. */
const line = z.array(z.tuple([z.number(), z.number().min(0)])).min(2);

/** How pieces come to be, in figures that hold for every form. */
export const making = z.strictObject({
  startingOdds: z.record(
    z.string(),
    z.strictObject({
      name: z.string(),
      period: z.number(),
      'bench-copy': z.number(),
      'machine-copy': z.number(),
      'to-deceive': z.number(),
      why: sentence,
    }),
  ),
  defaultOdds: z.string(),
  /** How far outside its claimed span a period piece may fall, by provincial lag and slack in claims. */
  provincialLagYears: z.number().positive(),
  /** How much likelier a shop of the claimed place is than its share says, and one from elsewhere: factors. */
  claimedPlace: z
    .strictObject({ fits: z.number().min(1), elsewhere: z.number().min(0).max(1) })
    .default({ fits: 5, elsewhere: 0.3 }),
  counting,
  pooling: pooling.optional(),
  /** When later pieces in old styles were made: relative weights by year; never before the style began. */
  whenMade: z.strictObject({
    'bench-copy': line,
    'machine-copy': line,
    'to-deceive': line,
    why: sentence.optional(),
  }),
  /** Of 100 hand-made copies (fakes), how many were made throughout in the old way by a thorough maker. */
  thorough: z.strictObject({ 'bench-copy': figureOrText, 'to-deceive': figureOrText }),
  /** Of 100 pieces, how many were spared from use and handling (parlour, store). */
  spared: z.strictObject({ period: figureOrText, later: figureOrText }),
  /** Of 100 parts, how many the maker took from another old piece; and where the piece was built of such. */
  reused: z.strictObject({
    period: figureOrText,
    'bench-copy': figureOrText,
    'machine-copy': figureOrText,
    'to-deceive': figureOrText,
    ofOldStock: figureOrText,
  }),
  /** Of 100 pieces, how many were built largely of parts and boards of older pieces. */
  oldStock: z.strictObject({ period: figureOrText, 'bench-copy': figureOrText, 'to-deceive': figureOrText }),
  /**
   * Of 100 copies and fakes for which a place is claimed, how many are made after its work; and how much of its habits they took
   * over, of what shows and of what does not.
   */
  imitation: z.strictObject({
    'bench-copy': figureOrText,
    'to-deceive': figureOrText,
    shown: figureOrText,
    hidden: figureOrText,
  }),
  /** By maker's way and year of the part: share by hand, early machine (rest: modern machine). */
  tooling: z.record(z.string(), z.strictObject({ hand: line, earlyMachine: line, why: sentence.optional() })),
  /** By how the part came and its age in years: share aged naturally, share imitated (rest: none). */
  ageing: z.record(z.string(), z.strictObject({ natural: line, imitated: line, why: sentence.optional() })),
  use: z.record(z.string(), z.strictObject({ natural: line, imitated: line, why: sentence.optional() })),
  /** Of 100 signs truly there, how many the examiner reports as present; and of 100 not there. */
  sureness: z.record(
    z.enum(['plain', 'fairly', 'hint']),
    z.strictObject({ there: figureOrText, notThere: figureOrText }),
  ),
  /**
   * What is done to a whole piece at one time: of 100 pieces a century in use, how many went through it, and since when there
   * have been the means for it.
   */
  campaigns: z
    .record(id, z.strictObject({ name: z.string(), since: year.optional(), inACentury: figureOrText }))
    .default({}),
  /** Of 100 such pieces, how many would show what the examiner calls by these words. */
  expected: z.strictObject({
    'hardly ever': figureOrText,
    seldom: figureOrText,
    sometimes: figureOrText,
    often: figureOrText,
    'nearly always': figureOrText,
  }),
  /** Of 100 such pieces looked over for mends, later parts and changes, in how many none is found. */
  lookedOver: z.strictObject({
    original: figureOrText,
    repaired: figureOrText,
    altered: figureOrText,
    married: figureOrText,
    copied: figureOrText,
    faked: figureOrText,
  }),
  /** Of 100 period pieces, how many had their bare surfaces scraped, washed or dipped all over, so that nothing shows its age. */
  scrubbed: figureOrText,
  /** How far signs of one group go together: 0 apart, 1 as one. */
  groupTogether: figureOrText,
  /** Of 100 parts, in how many the maker kept to the way of the piece in a habit seen on several parts. */
  habitTogether: figureOrText,
  /** How much of what a tool mark or fastener tells is told again by the same on another part. */
  alikeTogether: figureOrText,
  /** Of 100 pieces, how many have a history that none of the readings tells. */
  outsideTheList: figureOrText,
  basis,
  sources: z.array(id).default([]),
});
export type Making = z.infer<typeof making>;

/** Everything the knowledge files say, by id, in their order. */
export type Knowledge = {
  version: string;
  families: { id: string; name: string; signs: string[] }[];
  signs: Record<string, Sign & { family: string; mine?: boolean }>;
  forms: Record<string, Form>;
  alterations: Record<string, Alteration>;
  shops: Record<string, Shop & { mine?: boolean }>;
  making: Making;
  /** Photographs and answers to ask for where a piece can't be visited. */
  asks?: Record<string, Ask>;
  /** The kinds of part that the name of a group stands for. */
  partGroups?: Record<string, string[]>;
  /** Line drawings of how a sign looks, by their own id. */
  signDrawings?: Record<string, SignDrawing>;
  /** Why the other signs have none, by the reason's id. */
  signsNotDrawn?: Record<string, NotDrawn>;
  woods: Record<string, Wood>;
  /** Undefined where wood-movement.yaml is missing. */
  woodMovement?: WoodMovement | undefined;
  /** Undefined where measurements.yaml is missing. */
  measurements?: Measurements | undefined;
  /** Undefined where consumer-prices.yaml is missing. */
  consumerPrices?: ConsumerPrices | undefined;
  sources: Record<string, Work>;
};
