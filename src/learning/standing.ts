import { mean } from '../ground/statistics.ts';
import { counted } from '../ground/words.ts';
import type { ReckonedCase } from './runningScore.ts';

/** So many cases must have been foretold before figures learned from them may be used. */
export const fewestCases = 10;

/** How figures learned from settled cases stand against the figures as they are. Scores in bits: lower is better. */
export type Standing = {
  /** How many cases were foretold both ways. */
  cases: number;
  fixedBits?: number;
  learnedBits?: number;
  mayUse: boolean;
  /** In a sentence, with the figures: why they may be used or may not. */
  words: string;
};

/**
 * Whether learned figures may be used: only after at least ten settled cases, and only while they foretold the verdicts better
 * than the figures as they are.
 *
 * The score of a case is −log2 of the probability given to its verdict, never taken below 1 in 1000: no reading is told as less
 * probable than that.
 */
export function standingOf(reckoned: readonly ReckonedCase[]): Standing {
  const foretold = reckoned.flatMap(({ fixed, learned }) =>
    fixed === undefined || learned === undefined ? [] : [{ fixed: bitsOf(fixed), learned: bitsOf(learned) }],
  );
  const cases = foretold.length;
  if (cases === 0)
    return { cases, mayUse: false, words: `No case is settled yet; at least ${fewestCases} are needed.` };
  const fixedBits = mean(foretold.map(({ fixed }) => fixed));
  const learnedBits = mean(foretold.map(({ learned }) => learned));
  const scores = `${learnedBits.toFixed(3)} bits a case against ${fixedBits.toFixed(3)} by the figures as they are (lower is better)`;
  const told = { cases, fixedBits, learnedBits };
  if (cases < fewestCases)
    return {
      ...told,
      mayUse: false,
      words: `${counted(cases, 'case is', 'cases are')} settled; at least ${fewestCases} are needed. So far: ${scores}.`,
    };
  return learnedBits < fixedBits
    ? { ...told, mayUse: true, words: `Over ${cases} cases learned figures predicted better: ${scores}.` }
    : {
        ...told,
        mayUse: false,
        words: `Learned figures predicted no better: ${scores}, over ${cases} cases.`,
      };
}

/** What a verdict cost that was given this probability, in bits. */
export function bitsOf(probability: number): number {
  return -Math.log2(Math.max(probability, 0.001));
}
