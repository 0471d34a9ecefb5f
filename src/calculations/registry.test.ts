import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { calculationsDoc, calculationsDocFile } from '../../scripts/calculationsDoc.ts';
import { houseKnowledge } from '../../test/kits/houseKnowledge.ts';
import type { Picture } from '../photo/picture.ts';
import { readPixels } from '../record/readPixels.ts';
import type { Calculation, CalculationContext } from './define.ts';
import { calculations, findCalculation } from './registry.ts';
import { picturesOf, runById } from './runById.ts';
import { noKnowledge } from './testing/outputOf.ts';

const root = new URL('../../', import.meta.url);
const knowledge = await houseKnowledge();

const limits = { mostPixels: 1e7, mostHeicPixels: 1e7, heicWorker: new URL('none', root) };

/** The pictures that examples name are in the program's own folder. */
async function contextFor({ id, example, needsKnowledge }: Calculation): Promise<CalculationContext> {
  const pictures = new Map<string, Picture>();
  for (const name of picturesOf(id, example)) {
    const read = await readPixels(fileURLToPath(new URL(name, root)), limits);
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    pictures.set(name, read.value);
  }
  if (needsKnowledge === false) return { ...noKnowledge, pictures };
  if (!knowledge) throw new Error('the knowledge files have faults: npm run knowledge');
  return { yearNow: 2026, knowledge, pictures };
}

describe('the registry', () => {
  test('is sorted by id and has each id once', () => {
    const ids = calculations.map((each) => each.id);
    expect(ids).toEqual([...new Set(ids)].sort());
    expect(ids).toContain('inference.posterior');
    expect(findCalculation('inference.posterior')?.id).toBe('inference.posterior');
    expect(findCalculation('nothing')).toBeUndefined();
  });

  test.each(calculations)(
    '$id says what it answers, how, and on whose word',
    ({ id, answers, method, source }) => {
      expect(id).toMatch(/^[a-z]+\.[a-zA-Z-]+$/);
      expect(answers).toMatch(/^[A-Z].*\?$/);
      expect(method).toMatch(/\.$/);
      expect(method.length).toBeGreaterThan(80);
      expect(source).toMatch(/\.$/);
    },
  );

  test.each(calculations)(
    'the example of $id runs, and what comes out has the fields it promises',
    async (calculation) => {
      const result = runById(calculation.id, calculation.example, await contextFor(calculation));
      if (!result.ok) throw new Error(JSON.stringify(result.faults));
      expect(calculation.output.parse(result.output)).toEqual(result.output);
      expect(JSON.parse(JSON.stringify(result.output))).toEqual(result.output);
    },
  );

  test.each(calculations)('$id has JSON Schemas that refuse unknown fields', ({ input, output }) => {
    expect(z.toJSONSchema(input, { io: 'input' })).toMatchObject({
      type: 'object',
      additionalProperties: false,
    });
    expect(() => z.toJSONSchema(output)).not.toThrow();
  });

  test('docs/calculations.md is up to date: npx tsx scripts/calculationsDoc.ts', () => {
    expect(readFileSync(calculationsDocFile, 'utf8')).toBe(calculationsDoc());
  });
});

describe('values from outside (test/reference/README.md)', () => {
  const page = readFileSync(new URL('test/reference/README.md', root), 'utf8');
  const [tables = '', without = ''] = page.split('## Calculations without outside values');
  const rows = tables.split('\n').filter((line) => line.startsWith('| `'));

  test.each(calculations)('$id is compared with some, or says why not', ({ id }) => {
    const compared = rows.some((row) => row.includes(`\`${id}\``));
    const excused = without.includes(`- \`${id}\`:`);
    expect({ id, compared, excused }).toEqual({ id, compared, excused: !compared });
  });

  test('every table named is there', () => {
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) {
      const file = /^\| `([^`]+)`/.exec(row)?.[1] as string;
      expect(existsSync(new URL(`test/reference/${file}`, root)), file).toBe(true);
    }
  });
});
