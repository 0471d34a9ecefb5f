import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { directness, holderRoles } from '../piece/owner.ts';
import { checkChain } from '../provenance/checkChain.ts';
import { type Holding, holdingSureness } from '../provenance/holding.ts';
import { impossibleKinds } from '../provenance/impossible.ts';
import { provenanceStatement, statementText } from '../provenance/statement.ts';
import { defineCalculation } from './define.ts';

const year = z.int().min(1000).max(2200);
const span = z.tuple([year, year]);
const openSpan = z.tuple([year.nullable(), year.nullable()]);

const owner = z.strictObject({
  name: z.string().trim().min(1).max(300),
  role: z.enum(holderRoles).default('owner'),
  /** Years of birth and death, or of a firm from founding to closing; null for one that is not known. */
  lived: openSpan.optional(),
  /** From when to when it was held; null for an end that is not known. */
  held: openSpan.optional(),
  /** Between which years it began and ended, where that is in doubt; before `held`. */
  began: span.optional(),
  ended: span.optional(),
  /** purchased, auction, descent, bequest, gift, marriage, made, commissioned, exchange, consigned, loan, found; or words. */
  how: z.string().max(300).default(''),
  place: z.string().max(300).default(''),
  source: z.string().max(2000).default(''),
  sure: z.enum(holdingSureness).default('plain'),
  /** Whether it came straight from the one before. */
  direct: z.enum(directness).default('unknown'),
  /** A label, stamp or brand of theirs is on the piece. */
  labelled: z.boolean().default(false),
});

const input = z.strictObject({
  owners: z.array(owner).max(200),
  /** Between which years the piece was made, by the leading reading. */
  made: span.optional(),
});
type Input = z.infer<typeof input>;

/** `provenance.check`: see its own fields. */
export const provenanceCheck = defineCalculation({
  id: 'provenance.check',
  answers: 'Does the chain of owners hold: where are gaps, overlaps and things that can’t have been?',
  method:
    'Holdings stand in the order in which they began. A gap lies between the latest year by which one owner’s holding ended and the earliest in which the next began, if more than a year, or where a year ' +
    'is missing and the piece is not said to have passed straight on; also from the latest year of making to the first owner, where that is not the one it was made for; it stays open where it is not told from when they had it. Overlaps are years in which two owners or dealers must both have had it; keepers, agents and auction houses have no title and make neither. ' +
    'impossible is what can’t have been under any year left open: dates that run backwards, had before made, before birth or founding, after death or closing, a label of someone gone before the piece was made. ' +
    'statement is the chain as printed, with its notes and its key; parts are the three apart. Where sure is fairly or hint the statement has the Guide’s word for it.',
  source:
    'Conventions of the AAM Guide to Provenance Research (2001) as quoted in the Carnegie Museum of Art’s drafts of a standard (2015, 2016), openings read; the arithmetic of years is ours.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    gaps: z.array(
      z.strictObject({
        after: z.string().optional(),
        before: z.string().optional(),
        from: z.number().optional(),
        to: z.number().optional(),
        words: z.string(),
      }),
    ),
    overlaps: z.array(
      z.strictObject({
        names: z.tuple([z.string(), z.string()]),
        from: z.number(),
        to: z.number(),
        words: z.string(),
      }),
    ),
    impossible: z.array(
      z.strictObject({ kind: z.enum(impossibleKinds), name: z.string(), words: z.string() }),
    ),
    statement: z.string(),
    parts: z.strictObject({ text: z.string(), notes: z.array(z.string()), key: z.string() }),
    /** The holdings, earliest first, by their place in `owners` from 0. */
    order: z.array(z.int()),
    remarks: z.array(z.string()),
  }),
  example: {
    owners: [
      {
        name: 'Josiah Example',
        lived: [1741, 1809],
        how: 'made',
        place: 'Newport',
        source: 'Family statement of 1923; no document.',
        sure: 'hint',
      },
      {
        name: 'Ruth Sample',
        lived: [1820, 1901],
        held: [1860, 1901],
        how: 'descent',
        place: 'Providence',
        source: 'Her will of 1899.',
      },
      {
        name: 'Sample & Co.',
        role: 'dealer',
        lived: [1905, null],
        held: [1920, 1924],
        place: 'Boston',
        source: 'Paper label under the seat rail.',
        labelled: true,
      },
      {
        name: 'Ada Model',
        lived: [1890, 1971],
        held: [1924, 1971],
        how: 'purchased',
        place: 'Boston',
        source: 'Receipt of May 3, 1924, seen.',
        direct: 'yes',
      },
    ],
    made: [1760, 1790],
  },
  run: (asked) => {
    const faults = backwards(asked);
    if (faults.length > 0) return { ok: false, faults };
    const { ordered, gaps, overlaps, impossible, remarks } = checkChain(
      asked.owners.map(holdingOf),
      asked.made,
    );
    const parts = provenanceStatement(ordered);
    const order = ordered.map(({ at }) => at);
    return {
      ok: true,
      output: { gaps, overlaps, impossible, statement: statementText(parts), parts, order, remarks },
    };
  },
});

function holdingOf(owner: Input['owners'][number]): Holding {
  const { lived, held, began, ended, ...rest } = owner;
  const one = (value: number | null | undefined) => (value == null ? undefined : ([value, value] as const));
  return {
    ...rest,
    lived: { from: lived?.[0] ?? undefined, to: lived?.[1] ?? undefined },
    began: began ?? one(held?.[0]),
    ended: ended ?? one(held?.[1]),
  };
}

/** A single span that runs backwards is a slip of the pen; two that do against each other are a finding. */
function backwards({ owners, made }: Input): Fault[] {
  const spans = [
    { path: 'made', span: made },
    ...owners.flatMap(({ lived, began, ended }, index) =>
      Object.entries({ lived, began, ended }).map(([field, each]) => ({
        path: `owners[${index}].${field}`,
        span: each,
      })),
    ),
  ];
  return spans.flatMap(({ path, span: each }) =>
    each != null && each[0] != null && each[1] != null && each[0] > each[1]
      ? [
          {
            code: 'provenance.years-backwards',
            path,
            message: `The years ${each[0]} and ${each[1]} do not rise: put the earlier one first.`,
          },
        ]
      : [],
  );
}
