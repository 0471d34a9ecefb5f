import type { z } from 'zod';
import type { Refused } from '../ground/fault.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import type { Picture } from '../photo/picture.ts';
import type { EarlyLooks } from '../weighing/weighCase.ts';
import { inputFaults } from './inputFaults.ts';

/** What a calculation may lean on besides its input. */
export type CalculationContext = {
  knowledge: Knowledge;
  /** The current year, handed in so that nothing reads a clock. */
  yearNow: number;
  /** The pictures that the input names, read beforehand by whoever asks: see `picturesOf`. */
  pictures?: ReadonlyMap<string, Picture>;
  /** Called with the share done (0–1) on long work; return false to stop. */
  onProgress?: (share: number) => boolean;
  /** Called with the next looks of a weighing, which are ready before its long work begins. */
  onEarly?: (looks: EarlyLooks) => void;
};

/** A calculation's answer, or what is wrong with its input. */
export type CalculationResult<Output> = { ok: true; output: Output } | Refused;

/** What screens, terminal, HTTP and reports need to know of a computation besides running it. */
type Told = {
  id: string;
  /** The question it answers, in one line. */
  answers: string;
  /** The method in words, its range and its limits. */
  method: string;
  /** Source of the method: a work, a standard, or "ours", with why. */
  source: string;
  /** False where it leans on nothing but its input; left out means it needs the knowledge files. */
  needsKnowledge?: boolean;
  /** A working input, run as a test and printed by the terminal. */
  example: unknown;
};

/**
 * One computation. `Asked` is what may be asked of it, before its schema has filled in what was left out; both types are those of
 * its schemas, so that nobody declares them again.
 */
export type Calculation<Asked = unknown, Output = unknown> = Told & {
  input: z.ZodType<unknown, Asked>;
  output: z.ZodType<Output>;
  /**
   * The pictures an input names: a file on the terminal, the SHA-256 of a photo of the record over HTTP. Whoever asks reads
   * them and hands them in, since a calculation opens no files. None where it looks at none or the input does not fit; left
   * out where it never looks at any.
   */
  pictures?: (input: unknown) => readonly string[];
  /** Reads any input by the schema and answers it; what does not fit comes back as faults with their paths. */
  answer: (input: unknown, context: CalculationContext) => CalculationResult<Output>;
};

/** A computation as it is written down: its run and its pictures meet only what its schema has read. */
type Written<Asked, Read, Output> = Told & {
  input: z.ZodType<Read, Asked>;
  output: z.ZodType<Output>;
  pictures?: (input: Read) => readonly string[];
  run: (input: Read, context: CalculationContext) => CalculationResult<NoInfer<Output>>;
};

/** Ties a computation to its schemas: from here on an input is read before it is run. */
export function defineCalculation<Asked, Read, Output>(
  written: Written<Asked, Read, Output>,
): Calculation<Asked, Output> {
  const { run, pictures, ...told } = written;
  return {
    ...told,
    ...(pictures && {
      pictures: (input) => {
        const read = written.input.safeParse(input);
        return read.success ? pictures(read.data) : [];
      },
    }),
    answer: (input, context) => {
      const read = written.input.safeParse(input);
      return read.success
        ? run(read.data, context)
        : { ok: false, faults: inputFaults(read.error.issues, input) };
    },
  };
}
