import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import { findingState, sureness } from '../../src/piece/finding.ts';
import { observation } from '../../src/piece/observation.ts';
import { claim } from '../../src/piece/piece.ts';

/** The verdicts that published cases carry. */
export const verdicts = [
  'period-intact',
  'period-repaired',
  'period-enhanced-or-altered',
  'married',
  'later-copy',
  'deliberate-fake',
  'undetermined',
] as const;

const publishedCase = z.object({
  id: z.string(),
  form: z.string(),
  findings: z.array(z.object({ finding: z.string(), level: z.string() })),
  verdict: z.object({ reading: z.enum(verdicts) }),
});
export type PublishedCase = z.infer<typeof publishedCase>;

const mappedCase = z.object({
  form: z.string(),
  claim: claim.optional(),
  mode: z.enum(['in-hand', 'photo-only']).optional(),
  findings: z.array(
    z.object({
      from: z.number().int(),
      sign: z.string(),
      part: z.string().optional(),
      state: findingState,
      sure: sureness.optional(),
    }),
  ),
  /** What no sign covers, with how far it would be expected of each kind of piece. */
  observations: z
    .array(
      z.object({
        from: z.number().int(),
        words: z.string(),
        part: z.string().optional(),
        expected: observation.shape.expected,
      }),
    )
    .default([]),
  uncovered: z.array(z.number().int()).default([]),
});
export type MappedCase = z.infer<typeof mappedCase>;

/** The published cases of a file, and what each was mapped to. @throws Error with a plain sentence if a file is not of the shape */
export async function readPublishedCases(
  casesFile: string,
  mappingFile: string,
): Promise<{ cases: PublishedCase[]; mapping: Record<string, MappedCase> }> {
  const cases = z.object({ cases: z.array(publishedCase) }).safeParse(await readJson(casesFile));
  if (!cases.success)
    throw new Error(`${casesFile} is not a file of published cases: ${cases.error.issues[0]?.message ?? ''}`);
  const mapping = z
    .object({ cases: z.record(z.string(), mappedCase) })
    .safeParse(await readJson(mappingFile));
  if (!mapping.success)
    throw new Error(
      `${mappingFile} is not a mapping of cases to signs: ${mapping.error.issues[0]?.message ?? ''}`,
    );
  return { cases: cases.data.cases, mapping: mapping.data.cases };
}

async function readJson(file: string): Promise<unknown> {
  try {
    return JSON.parse(await readFile(file, 'utf8'));
  } catch (error) {
    throw new Error(
      `${file} cannot be read as JSON: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
}
