import { z } from 'zod';
import type { Calculation, CalculationContext } from '../calculations/define.ts';
import { calculations, findCalculation } from '../calculations/registry.ts';
import type { Fault } from '../ground/fault.ts';
import type { Picture } from '../photo/picture.ts';
import type { Terminal } from './terminal.ts';

/** `calc`: lists the calculations, shows one's schemas or example, or runs it. Returns the exit code. */
export async function runCalc(args: readonly string[], terminal: Terminal): Promise<number> {
  const [id, what, ...more] = args;
  if (id === undefined) return list(terminal);
  const calculation = findCalculation(id);
  if (!calculation)
    return refuse(terminal, `There is no calculation “${id}”: npx underside calc lists those there are.`);
  if (what === undefined) {
    return refuse(
      terminal,
      `Write the file to read after ${id}, or - for standard input; --example prints one that works.`,
    );
  }
  if (more.length > 0) return refuse(terminal, `One file at a time: take out ${more.join(' ')}.`);
  if (what === '--schema') return print(terminal, schemasOf(calculation));
  if (what === '--example') return print(terminal, calculation.example);
  if (what.startsWith('--'))
    return refuse(terminal, `There is no ${what} here: write --schema, --example, or a file.`);
  return run(calculation, what, terminal);
}

function list(terminal: Terminal): number {
  const width = Math.max(...calculations.map((each) => each.id.length));
  for (const { id, answers } of calculations) terminal.out(`${id.padEnd(width)}  ${answers}`);
  return 0;
}

async function run(calculation: Calculation, file: string, terminal: Terminal): Promise<number> {
  const name = file === '-' ? 'standard input' : file;
  let written: string;
  try {
    written = await terminal.readInput(file);
  } catch (error) {
    return refuse(terminal, `${name} can’t be read: ${whyNot(error)}.`);
  }
  let input: unknown;
  try {
    input = JSON.parse(written.replace(/^\uFEFF/, ''));
  } catch (error) {
    return refuse(
      terminal,
      `${name} is not JSON: ${error instanceof Error ? error.message : String(error)}.`,
    );
  }
  const context = await contextFor(calculation, terminal);
  if (!context) return 2;
  const pictures = await readPictures(calculation.pictures?.(input) ?? [], terminal);
  if (!pictures) return 2;
  const result = calculation.answer(input, Object.assign(context, { pictures }));
  if (result.ok) return print(terminal, result.output);
  for (const fault of result.faults) terminal.err(faultLine(fault));
  return 2;
}

/** Every picture the input names; undefined where one can't be read, which has been said. */
async function readPictures(
  names: readonly string[],
  terminal: Terminal,
): Promise<Map<string, Picture> | undefined> {
  const pictures = new Map<string, Picture>();
  for (const name of names) {
    const read = await terminal.readPicture(name);
    if (!read.ok) {
      for (const { message } of read.faults) terminal.err(message);
      return undefined;
    }
    pictures.set(name, read.value);
  }
  return pictures;
}

async function contextFor(
  calculation: Calculation,
  terminal: Terminal,
): Promise<CalculationContext | undefined> {
  const yearNow = terminal.yearNow();
  if (calculation.needsKnowledge === false) {
    return {
      yearNow,
      get knowledge(): never {
        throw new RangeError(`${calculation.id} says that it needs no knowledge, and asks for it`);
      },
    };
  }
  const loaded = await terminal.loadKnowledge();
  if (loaded.ok) return { yearNow, knowledge: loaded.knowledge };
  for (const line of loaded.lines) terminal.err(line);
  return undefined;
}

/** The JSON Schemas of a calculation's input and output. */
export function schemasOf(calculation: Pick<Calculation, 'input' | 'output'>): {
  input: unknown;
  output: unknown;
} {
  return {
    input: z.toJSONSchema(calculation.input, { io: 'input' }),
    output: z.toJSONSchema(calculation.output),
  };
}

function faultLine({ path, message }: Fault): string {
  return path === '' ? message : `${path}: ${message}`;
}

function whyNot(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (code === 'ENOENT') return 'there is no such file';
  if (code === 'EISDIR') return 'it is a folder';
  if (code === 'EACCES' || code === 'EPERM') return 'this user may not read it';
  return error instanceof Error ? error.message : String(error);
}

function print(terminal: Terminal, answer: unknown): number {
  terminal.out(JSON.stringify(answer, null, 2));
  return 0;
}

function refuse(terminal: Terminal, sentence: string): number {
  terminal.err(sentence);
  return 2;
}
