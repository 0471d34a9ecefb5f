import type { z } from 'zod';
import { type Check, faultIn } from './check.ts';

/** Every entry has the fields its kind asks for, written as they should be. */
export const shape: Check = {
  id: 'shape',
  protects: 'Every entry has the fields its kind asks for, and no others, each written as it should be.',
  find: ({ entries }) =>
    entries.flatMap((entry) =>
      entry.issues.map((issue) => {
        const deepest = deepestIssue(issue);
        const strange = deepest.issue.code === 'unrecognized_keys' ? deepest.issue.keys.slice(0, 1) : [];
        return faultIn('shape', entry, [...deepest.path, ...strange], wordsFor(deepest, entry.raw));
      }),
    ),
};

type Issue = { path: PropertyKey[]; issue: z.core.$ZodIssue };

/** Of a choice where nothing fits, the try that went furthest. */
function deepestIssue(issue: z.core.$ZodIssue): Issue {
  if (issue.code !== 'invalid_union') return { path: [...issue.path], issue };
  const tries = issue.errors.flat().map((inner) => deepestIssue(inner));
  const first = tries.sort((a, b) => b.path.length - a.path.length || rank(b.issue) - rank(a.issue))[0];
  return first === undefined
    ? { path: [...issue.path], issue }
    : { path: [...issue.path, ...first.path], issue: first.issue };
}

/** A badly written text says more than a wrong type. */
function rank(issue: z.core.$ZodIssue): number {
  return issue.code === 'invalid_format' ? 1 : 0;
}

function wordsFor({ path, issue }: Issue, raw: unknown): { what: string; mend: string; example: string } {
  const field = path.map(String).join(' → ') || 'The entry';
  const example = exampleOf(path, issue);
  if (issue.code === 'unrecognized_keys')
    return {
      what: `${field} has a field that means nothing here: ${issue.keys.join(', ')}.`,
      mend: 'Correct its spelling, indent it where it belongs, or take it out.',
      example,
    };
  const found = valueAt(raw, path);
  if (found === undefined)
    return { what: `${field} is missing.`, mend: `Add it. Wanted: ${wanted(issue)}.`, example };
  return {
    what: `${field} says ${JSON.stringify(found)?.slice(0, 80)}, which does not fit.`,
    mend: `Wanted: ${wanted(issue)}.`,
    example,
  };
}

/** What the field should hold, in plain words. */
function wanted(issue: z.core.$ZodIssue): string {
  if (issue.code === 'invalid_type') return kinds[issue.expected] ?? issue.expected;
  if (issue.code === 'invalid_value') return `one of ${issue.values.map(String).join(', ')}`;
  if (issue.code === 'too_small') return `no less than ${issue.minimum}`;
  if (issue.code === 'too_big') return `no more than ${issue.maximum}`;
  return issue.message.replace(/^Invalid /, 'something other than this ');
}

const kinds: Record<string, string> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list in square brackets',
  tuple: 'two values in square brackets',
  object: 'an entry with named fields, or a figure in quotes',
  record: 'an entry with named fields',
};

function valueAt(raw: unknown, path: readonly PropertyKey[]): unknown {
  let value = raw;
  for (const step of path) value = (value as Record<PropertyKey, unknown> | null | undefined)?.[step];
  return value;
}

/** Right ways to write the fields most often got wrong. */
const rightFields: Record<string, string> = {
  id: 'id: saw-arcs-circular',
  look: 'look: Rake a light along the board; arcs of one radius show.',
  minutes: 'minutes: 1',
  needs:
    'needs: turned-over        # nothing, turned-over, seat-lifted, part-removed, owners-leave, laboratory',
  inPhoto: 'inPhoto: hint             # clear, hint, no',
  hangsOn: 'hangsOn: tooling          # making, year, part-year, origin, tooling, ageing, use, alteration/ID',
  on: 'on: [front-rail, side-rail]',
  span: 'span: { earliest: 1814, commonFrom: 1830, source: ww-circ }',
  basis: 'basis: { by: common practice, why: "What is usual in the trade, in one sentence." }',
  by: 'by: judgement            # common practice, judgement, from memory',
  why: 'why: "One sentence, with a stop at its end."',
  sources: 'sources: [kelly, white2005]',
  read: 'read: in part             # in part, whole, not read',
  styleSpan: 'styleSpan: [1750, 1800]',
  years: 'years: [1750, 1800]',
};

/** Fields that hold figures. */
const figureFields = new Set([
  'shows',
  'happened',
  'renewed',
  'share',
  'in100',
  'thorough',
  'spared',
  'scrubbed',
  'campaign',
  'inACentury',
  'expected',
  'lookedOver',
  'reused',
  'oldStock',
  'imitation',
  'sureness',
  'groupTogether',
  'habitTogether',
  'alikeTogether',
  'outsideTheList',
]);

function exampleOf(path: readonly PropertyKey[], issue: z.core.$ZodIssue): string {
  const named = [...path].reverse().find((step) => typeof step === 'string' && step in rightFields);
  const figure = path.some((step) => figureFields.has(String(step)));
  if (figure && (issue.code !== 'invalid_value' || named === undefined)) return 'period: "86, 72–94"';
  return named === undefined
    ? 'See docs/knowledge.md for a whole entry.'
    : (rightFields[String(named)] ?? '');
}
