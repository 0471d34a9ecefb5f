import { writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { betaDraw } from '../../src/evidence/betaDraws.ts';
import { bestDraw, type Draw } from '../../src/evidence/figures.ts';
import { seededRandom } from '../../src/ground/seededRandom.ts';
import { compileKnowledge } from '../../src/knowledge/compileKnowledge.ts';
import { readKnowledgeFolder } from '../../src/knowledge/readKnowledge.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { readingsOfMaking } from '../../src/piece/readings.ts';
import { weighCase } from '../../src/weighing/weighCase.ts';
import { blunterDraw, simulateCase } from './simulateCase.ts';

/**
 * How often what was called settled is true, for cases drawn with some figures and weighed with the best ones. What is
 * right is a sum of probabilities under the figures drawn with, and so no whole number.
 */
export type SimulatedRow = {
  cases: number;
  leadingRight: number;
  firm: number;
  firmRight: number;
  makingFirm: number;
  makingFirmRight: number;
};

/** So many signs are looked for in a short visit, and in a full one. */
export const looksOfVisit = { short: 18, full: 60 } as const;

/** Draws cases from the model with the figures of each, so many signs looked for, and weighs them as the program does. */
export function simulatedRow(
  knowledge: Knowledge,
  figures: (seed: number) => Draw,
  seeds: readonly number[],
  draws: number,
  looks: number,
): SimulatedRow {
  const row = { cases: 0, leadingRight: 0, firm: 0, firmRight: 0, makingFirm: 0, makingFirmRight: 0 };
  const forms = ['side-chair', 'chest-of-drawers'];
  for (const seed of seeds) {
    const form = forms[seed % forms.length] as string;
    const { input, readings } = simulateCase(knowledge, form, looks, seed, figures(seed));
    const result = weighCase({ ...input, draws, seed: 1, quick: false }, knowledge, { yearNow: 2026 });
    if (!result.ok) throw new Error('a simulated case was refused');
    const { leading, firm, making } = result.output;
    row.cases++;
    row.leadingRight += readings[leading];
    if (firm) row.firm++;
    if (firm) row.firmRight += readings[leading];
    if (!making.firm) continue;
    row.makingFirm++;
    for (const id of readingsOfMaking[making.leading]) row.makingFirmRight += readings[id];
  }
  return row;
}

/** Use: npx tsx scripts/validate/simulate.ts [CASES]. Writes docs/simulation.md. */
async function main(cases: number): Promise<void> {
  const root = new URL('../../', import.meta.url);
  const { knowledge } = compileKnowledge(
    await readKnowledgeFolder(fileURLToPath(new URL('knowledge', root))),
  );
  if (knowledge === undefined) throw new Error('The knowledge files have faults; run "npm run knowledge".');
  const seeds = Array.from({ length: cases }, (_, index) => index + 1);
  const blunt = blunterDraw(knowledge);
  const ways: [string, (seed: number) => Draw][] = [
    ['the figures as they stand', () => bestDraw()],
    ['every figure redrawn from its range', (seed) => betaDraw(seededRandom(10_000 + seed))],
    ['every sign half its range blunter', () => blunt],
  ];
  const rows = Object.values(looksOfVisit).flatMap((looks) =>
    ways.map(([name, figures]) => {
      const row = simulatedRow(knowledge, figures, seeds, 100, looks);
      console.log(looks, name, JSON.stringify(row));
      const of = (right: number, all: number) => (all === 0 ? 'none' : `${right.toFixed(1)} of ${all}`);
      return `| ${looks} | ${name} | ${row.cases} | ${row.leadingRight.toFixed(1)} | ${of(row.firmRight, row.firm)} | ${of(row.makingFirmRight, row.makingFirm)} |`;
    }),
  );
  await writeFile(
    fileURLToPath(new URL('docs/simulation.md', root)),
    `# Settled, held against cases drawn from the model

Made by \`npx tsx scripts/validate/simulate.ts\`. Side chairs and chests of drawers with so many signs looked for, drawn evenly with a seed; what
is found is drawn from the model with the figures named in the row, then weighed as the program does, with the best
figures and 100 redraws. How many are right is the sum of how probable each is under the figures drawn with. So this says nothing of whether the figures are right, only whether *settled* keeps its word where they are not
quite.

| signs | drawn with | cases | leading reading right | settled readings right | settled makings right |
| --- | --- | --- | --- | --- | --- |
${rows.join('\n')}

Knowledge ${knowledge.version}.
`,
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  main(Number(process.argv[2] ?? 200)).catch((error: unknown) => {
    console.error(error instanceof Error ? error.message : String(error));
    process.exitCode = 1;
  });
