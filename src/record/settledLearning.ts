import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { z } from 'zod';
import { done, type Outcome, refuse } from '../ground/fault.ts';
import { contentHash } from '../knowledge/contentHash.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { learnedKnowledge } from '../learning/learnedKnowledge.ts';
import type { ReckonedCase } from '../learning/runningScore.ts';
import { inOrder, type SettledCase } from '../learning/settledCase.ts';
import { type Standing, standingOf } from '../learning/standing.ts';

/** How learning from one's own settled cases stands. */
export type LearningState = {
  /** Switched on by the user. */
  on: boolean;
  /** Learned figures are weighed with now: switched on, reckoned for what is there, and better. */
  inUse: boolean;
  /** The reckoning is of the cases and the knowledge as they are now. */
  isCurrent: boolean;
  /** Pieces whose case is left out. */
  leftOut: string[];
  reckoned: ReckonedCase[];
  standing: Standing;
  /** Why what was kept can't be read; it is left as it is. */
  fault?: string;
};

/** Figures learned from one's own settled cases: kept apart, off until they predict better, out of use when anything moved since. */
export type SettledLearning = {
  /** The knowledge to weigh with: with learned figures where they are in use. */
  knowledge(): Knowledge;
  state(): LearningState;
  /** Every settled case, those left out among them, as they are in the record now. */
  cases(): SettledCase[];
  /** What is to be reckoned: the cases that are not left out, and the knowledge without any. */
  question(): { cases: SettledCase[]; knowledge: Knowledge };
  /** Keeps what was reckoned of a question. */
  keep(question: { cases: SettledCase[]; knowledge: Knowledge }, reckoned: ReckonedCase[]): void;
  use(on: boolean): Outcome<undefined>;
  leaveOut(piece: string, out: boolean): Outcome<undefined>;
  /** To be told that a settled piece or the user's own entries may have changed. */
  look(): void;
};

const reckonedCase = z.strictObject({
  piece: z.string(),
  on: z.string(),
  weight: z.number(),
  counts: z.array(z.strictObject({ sign: z.string(), state: z.string(), seen: z.number(), of: z.number() })),
  fixed: z.number().optional(),
  learned: z.number().optional(),
});
const kept = z.strictObject({
  on: z.boolean().default(false),
  leftOut: z.array(z.string()).default([]),
  /** What was reckoned, and of which cases and knowledge. */
  of: z.string().default(''),
  reckoned: z.array(reckonedCase).default([]),
});
type Kept = z.infer<typeof kept>;

/**
 * Opens what was learned.
 *
 * @param file   where it is kept; made when something is first kept
 * @param read   the knowledge without settled cases, and the settled cases of the record, as they are now
 * @param onChange  told the knowledge to weigh with whenever it is another
 */
export function openSettledLearning(
  file: string,
  read: { base: () => Knowledge; settled: () => SettledCase[] },
  onChange: (knowledge: Knowledge) => void,
): SettledLearning {
  const { state, fault } = readKept(file);
  const now = { kept: state, knowledge: read.base() };
  const settled = () => inOrder(read.settled());
  const counted = (cases: readonly SettledCase[]) =>
    cases.filter(({ piece }) => !now.kept.leftOut.includes(piece));
  const isCurrent = (cases: readonly SettledCase[]) =>
    now.kept.of === stampOf({ cases: counted(cases), knowledge: read.base() });
  // Off, no piece is read: a record of thousands opens as fast as ever.
  const isUsed = () => now.kept.on && standingOf(now.kept.reckoned).mayUse && isCurrent(settled());
  const look = () => {
    const before = now.knowledge.version;
    now.knowledge = isUsed() ? learnedKnowledge(read.base(), now.kept.reckoned) : read.base();
    if (now.knowledge.version !== before) onChange(now.knowledge);
  };
  const become = (next: Kept) => {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(`${file}.new`, `${JSON.stringify(next, null, 1)}\n`, { flush: true });
    renameSync(`${file}.new`, file);
    now.kept = next;
    look();
  };
  const unless = (act: () => Outcome<undefined>): Outcome<undefined> =>
    fault === undefined ? act() : refuse('learning.file-has-a-slip', fault);
  look();

  return {
    knowledge: () => now.knowledge,
    state: () => {
      const current = isCurrent(settled());
      const reckoned = current ? now.kept.reckoned : [];
      return {
        on: now.kept.on,
        inUse: now.knowledge.version !== read.base().version,
        isCurrent: current,
        leftOut: now.kept.leftOut,
        reckoned,
        standing: standingOf(reckoned),
        ...(fault === undefined ? {} : { fault }),
      };
    },
    cases: settled,
    question: () => ({ cases: counted(settled()), knowledge: read.base() }),
    keep(question, reckoned) {
      if (fault !== undefined) throw new Error(fault);
      become({ ...now.kept, of: stampOf(question), reckoned });
    },
    use: (on) =>
      unless(() => {
        if (on && !isCurrent(settled()))
          return refuse('learning.not-reckoned', 'Reckon the settled cases first: something changed since.');
        const { mayUse, words } = standingOf(now.kept.reckoned);
        if (on && !mayUse) return refuse('learning.not-better', words);
        become({ ...now.kept, on });
        return done(undefined);
      }),
    leaveOut: (piece, out) =>
      unless(() => {
        if (!settled().some((each) => each.piece === piece))
          return refuse('learning.no-such-case', 'This piece is not a settled case.');
        const others = now.kept.leftOut.filter((each) => each !== piece);
        become({ ...now.kept, leftOut: out ? [...others, piece].sort() : others });
        return done(undefined);
      }),
    look,
  };
}

function stampOf({ cases, knowledge }: { cases: readonly SettledCase[]; knowledge: Knowledge }): string {
  return contentHash([knowledge.version, ...cases.map((each) => JSON.stringify(each))]);
}

function readKept(file: string): { state: Kept; fault?: string } {
  const none = kept.parse({});
  if (!existsSync(file)) return { state: none };
  const slip = {
    state: none,
    fault: `What was learned from your settled cases can’t be read. The program weighs without it, and the file ${file} is as it was: mend it, or take it away and reckon again.`,
  };
  try {
    const read = kept.safeParse(JSON.parse(readFileSync(file, 'utf8')));
    return read.success ? { state: read.data } : slip;
  } catch {
    return slip;
  }
}
