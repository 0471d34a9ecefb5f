import { useEffect, useMemo, useState } from 'react';
import type { Fault } from '../../calculations/define.ts';
import { caseFromPiece } from '../../evidence/caseFromPiece.ts';
import type { Piece } from '../../piece/piece.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { openWeigher, type Weigher, type WorkerLike } from './openWeigher.ts';

/** The redraws behind the intervals: how many, and the number they start from, so that anyone gets the same. */
export const redraws = { draws: 500, seed: 1 } as const;

/** What is known now of the weight of the findings. */
export type WeighingNow = {
  /** The latest weighing, or undefined before the first. */
  weighing: Weighing | undefined;
  /** True once it has all that was asked for: next looks, and intervals if they were wanted. */
  full: boolean;
  /** True while the weighing shown belongs to the findings before the last change. */
  behind: boolean;
  /** How far the longer weighing is, 0–1, or undefined when none runs. */
  progress: number | undefined;
  faults: readonly Fault[];
  /** The next looks of the last longer weighing: they stay until a new one tells its own, which it does before its redraws. */
  nextLooks: Weighing['nextLooks'];
  /** Breaks off the longer weighing; what was weighed quickly stays. */
  cancel: () => void;
  /** Starts the longer weighing again after it was broken off. */
  again: () => void;
};

type Stand = Omit<WeighingNow, 'cancel' | 'again' | 'behind'> & { of: string };

const nothingYet: Stand = {
  weighing: undefined,
  full: false,
  progress: undefined,
  faults: [],
  nextLooks: [],
  of: '',
};

/**
 * Weighs a piece as its findings change: at once in short, then in full off the page's thread.
 *
 * @param depth  `looks` stops at what to look at next; `intervals` redraws every figure as well
 */
export function useWeighing(piece: Piece, depth: 'looks' | 'intervals'): WeighingNow {
  const knowledge = useKnowledge();
  const [stand, setStand] = useState<Stand>(nothingYet);
  const [round, setRound] = useState(0);
  const asked = useMemo(() => JSON.stringify(caseFromPiece(piece)), [piece]);
  const desks = useMemo(() => {
    const known = { knowledge, yearNow: new Date().getFullYear() };
    return { quick: openWeigher(openWorker, known, false), long: openWeigher(openWorker, known, true) };
  }, [knowledge]);
  useEffect(() => () => stopAll(desks), [desks]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `round` asks for the same weighing again
  useEffect(() => weighTwice(desks, asked, depth, setStand), [desks, asked, depth, round]);
  const cancel = () => {
    desks.long.stop();
    setStand((now) => ({ ...now, progress: undefined }));
  };
  return { ...stand, behind: stand.of !== asked, cancel, again: () => setRound(round + 1) };
}

/** A piece of time in which several touches are taken as one before the longer weighing starts. */
const settleMs = 350;

function weighTwice(
  desks: { quick: Weigher; long: Weigher },
  asked: string,
  depth: 'looks' | 'intervals',
  setStand: (next: (now: Stand) => Stand) => void,
): () => void {
  const base = JSON.parse(asked);
  desks.long.stop();
  desks.quick.weigh(
    { ...base, draws: 0, quick: true },
    {
      progress: () => undefined,
      result: (result) =>
        setStand((now) => {
          if (now.of === asked && now.full) return now;
          if (!result.ok)
            return {
              ...now,
              of: asked,
              faults: result.faults,
              weighing: undefined,
              full: false,
              progress: undefined,
            };
          return { ...now, of: asked, faults: [], weighing: result.output, full: false };
        }),
    },
  );
  const timer = setTimeout(() => {
    setStand((now) => ({ ...now, progress: 0 }));
    const wanted = depth === 'intervals' ? { ...base, ...redraws } : { ...base, draws: 0 };
    desks.long.weigh(wanted, {
      progress: (share) => setStand((now) => ({ ...now, progress: share })),
      early: ({ nextLooks }) => setStand((now) => ({ ...now, nextLooks })),
      result: (result) =>
        setStand((now) => {
          if (!result.ok) return { ...now, of: asked, faults: result.faults, progress: undefined };
          const { output } = result;
          return {
            of: asked,
            faults: [],
            weighing: output,
            nextLooks: output.nextLooks,
            full: true,
            progress: undefined,
          };
        }),
    });
  }, settleMs);
  return () => clearTimeout(timer);
}

function stopAll(desks: { quick: Weigher; long: Weigher }): void {
  desks.quick.stop();
  desks.long.stop();
}

function openWorker(): WorkerLike {
  return new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }) as unknown as WorkerLike;
}
