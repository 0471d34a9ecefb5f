/** Writes docs/calculations.md from the registry: `npx tsx scripts/calculationsDoc.ts`. A test fails when it is stale. */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Calculation, CalculationContext } from '../src/calculations/define.ts';
import { byHand, calculations } from '../src/calculations/registry.ts';
import { schemasOf } from '../src/cli/calcCommand.ts';
import { fieldsOf } from './fieldsOf.ts';

export const calculationsDocFile = fileURLToPath(new URL('../docs/calculations.md', import.meta.url));

/** The page that describes every calculation. */
export function calculationsDoc(): string {
  return [
    '# Calculations',
    '',
    '<!-- Made by `npx tsx scripts/calculationsDoc.ts` from src/calculations/. Edit there. -->',
    '',
    'Each calculation is reached alike by the screens, by HTTP (`POST /api/calc/ID`) and from the terminal:',
    '',
    '```',
    'npx underside calc                    lists them',
    'npx underside calc ID FILE            runs one on a JSON file (- for standard input), prints JSON',
    'npx underside calc ID --schema        prints the JSON Schemas',
    'npx underside calc ID --example       prints an input that works',
    '```',
    '',
    'Input that can’t be used gives one plain sentence for each fault, with the path of the field: on standard error with exit code 2 from the terminal, as `{ faults: [{ code, path, message }] }` by HTTP.',
    '',
    '## Of a piece',
    '',
    'Called by the screens and the opinion.',
    '',
    ...calculations.filter((each) => !byHand.includes(each)).map(line),
    '',
    '## By hand',
    '',
    'No screen calls these: plain statistics, networks, orders and single figures, to hold the mathematics against published examples and to work a case by hand.',
    '',
    ...byHand.map(line),
    '',
    ...calculations.flatMap(section),
  ].join('\n');
}

function line({ id, answers }: Calculation): string {
  return `- [\`${id}\`](#${id.replaceAll('.', '')}): ${answers}`;
}

function section(calculation: Calculation): string[] {
  const { input, output } = schemasOf(calculation);
  return [
    `## ${calculation.id}`,
    '',
    calculation.answers,
    '',
    `**Method.** ${calculation.method}`,
    '',
    `**Source.** ${calculation.source}`,
    '',
    '**Input**',
    '',
    ...fieldsOf(input),
    '',
    '**Output**',
    '',
    ...fieldsOf(output),
    '',
    '**Example**',
    '',
    '```',
    compact(calculation.example),
    '```',
    '',
    ...exampleAnswer(calculation),
  ];
}

/** What the example gives, where that hangs on nothing but the example. */
function exampleAnswer(calculation: Calculation): string[] {
  if (calculation.needsKnowledge !== false || calculation.pictures !== undefined) return [];
  const result = calculation.answer(calculation.example, {} as CalculationContext);
  if (!result.ok)
    throw new Error(`the example of ${calculation.id} does not run: ${result.faults[0]?.message}`);
  const rounded = JSON.parse(JSON.stringify(result.output), (_, value) =>
    typeof value === 'number' ? Number(value.toPrecision(6)) : value,
  );
  return ['gives, to six digits,', '', '```', compact(rounded), '```', ''];
}

/** JSON with anything short on one line. */
function compact(value: unknown, indent = ''): string {
  const flat = JSON.stringify(value);
  if (flat.length + indent.length <= 100 || typeof value !== 'object' || value === null) return flat;
  const inner = `${indent}  `;
  const entries = Array.isArray(value)
    ? value.map((each) => `${inner}${compact(each, inner)}`)
    : Object.entries(value).map(([key, each]) => `${inner}${JSON.stringify(key)}: ${compact(each, inner)}`);
  const [open, close] = Array.isArray(value) ? ['[', ']'] : ['{', '}'];
  return `${open}\n${entries.join(',\n')}\n${indent}${close}`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(calculationsDocFile, calculationsDoc());
