import { useContext, useEffect, useMemo, useSyncExternalStore } from 'react';
import { caseFromPiece } from '../../evidence/caseFromPiece.ts';
import type { Piece } from '../../piece/piece.ts';
import { useDesk } from '../record/DeskProvider.tsx';
import { type Depth, goesTo, type Stand } from './openWeighings.ts';
import { WeighingsHere } from './WeighingsProvider.tsx';

/** What is known now of the weight of the findings. */
export type WeighingNow = Omit<Stand, 'of' | 'depth'> & {
  /** True once it has all that was asked for: next looks, and intervals if they were wanted. */
  full: boolean;
  /** True while the weighing shown belongs to the findings before the last change. */
  behind: boolean;
  /** Ends the longer weighing; what was weighed in short stays. */
  cancel: () => void;
  /** Starts the longer weighing again after it was ended. */
  again: () => void;
};

/**
 * Weighs a piece as its findings change: at once in short, then in full off the page's thread. All pages of a piece share it.
 *
 * @param depth  `looks` stops at what to look at next; `intervals` redraws every figure as well
 */
export function useWeighing(piece: Piece, depth: Exclude<Depth, 'short'>): WeighingNow {
  const weighings = useContext(WeighingsHere);
  if (weighings === undefined) throw new Error('This screen stands outside the weighings.');
  const desk = useDesk();
  const of = useMemo(() => caseOf(piece), [piece]);
  const { of: shown, ...stand } = useSyncExternalStore(weighings.subscribe, () =>
    weighings.standOf(piece.id),
  );
  // Asked for as soon as the desk has it: the worker weighs while the page is still drawing the touch.
  useEffect(() => {
    let asked = '';
    const ask = () => {
      const now = desk.view(piece.id).piece;
      const next = now === undefined ? asked : caseOf(now);
      if (next === asked) return;
      asked = next;
      weighings.want(piece.id, next, depth);
    };
    ask();
    return desk.watch(piece.id, ask);
  }, [desk, weighings, piece.id, depth]);
  return {
    ...stand,
    full: goesTo(stand, depth),
    behind: shown !== of,
    cancel: weighings.cancel,
    again: () => weighings.want(piece.id, of, depth),
  };
}

/** The case of a piece, as the weighings take it. */
export function caseOf(piece: Piece): string {
  return JSON.stringify(caseFromPiece(piece));
}
