import type { z } from 'zod';
import type { Knowledge } from '../knowledge/schema.ts';
import type { Picture } from '../photo/picture.ts';

/** What a calculation may lean on besides its input. */
export type CalculationContext = {
  knowledge: Knowledge;
  /** The current year, handed in so that nothing reads a clock. */
  yearNow: number;
  /** The pictures that the input names, read beforehand by whoever asks: see `picturesOf`. */
  pictures?: ReadonlyMap<string, Picture>;
  /** Called with the share done (0–1) on long work; return false to stop. */
  onProgress?: (share: number) => boolean;
  /** Called with parts of the output that are ready before long work begins. */
  onEarly?: (part: unknown) => void;
};

/** What is wrong with an input, as data: where, what, and the mend. */
export type Fault = { code: string; path: string; message: string };

/** A calculation's answer, or what is wrong with its input. */
export type CalculationResult<Output> = { ok: true; output: Output } | { ok: false; faults: Fault[] };

/** One computation: everything that screens, terminal, HTTP and reports need to know of it. */
export type Calculation<Input = unknown, Output = unknown> = {
  id: string;
  /** The question it answers, in one line. */
  answers: string;
  /** The method in words, its range and its limits. */
  method: string;
  /** Source of the method: a work, a standard, or "ours", with why. */
  source: string;
  input: z.ZodType<Input>;
  output: z.ZodType<Output>;
  /** False where it leans on nothing but its input; left out means it needs the knowledge files. */
  needsKnowledge?: boolean;
  /**
   * The pictures an input names: a file on the terminal, the SHA-256 of a photo of the record over HTTP. Whoever asks reads
   * them and hands them in, since a calculation opens no files. Left out where it looks at none.
   */
  pictures?: (input: Input) => readonly string[];
  /** A working input, run as a test and printed by the terminal. */
  example: unknown;
  run: (input: Input, context: CalculationContext) => CalculationResult<Output>;
};

/** Ties input and output types together; returns its argument. */
export function defineCalculation<Input, Output>(
  calculation: Calculation<Input, Output>,
): Calculation<Input, Output> {
  return calculation;
}
