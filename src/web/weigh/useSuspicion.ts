import { useContext, useEffect, useMemo, useState } from 'react';
import type { CalculationResult } from '../../calculations/define.ts';
import type { Piece } from '../../piece/piece.ts';
import type { Suspicion } from '../../weighing/suspicion.ts';
import { caseOf } from './useWeighing.ts';
import { WeighingsHere } from './WeighingsProvider.tsx';

/** In so much time several touches are taken as one. */
const settleMs = 350;

/**
 * What would settle whether an alteration happened, asked anew as the findings change.
 *
 * @param alteration  none while nothing is suspected
 * @returns the last answer on this alteration, and whether a newer one is on its way
 */
export function useSuspicion(
  piece: Piece,
  alteration: string | undefined,
): { answer: CalculationResult<Suspicion> | undefined; behind: boolean } {
  const weighings = useContext(WeighingsHere);
  const of = useMemo(() => caseOf(piece), [piece]);
  const [came, setCame] = useState<{
    of: string;
    alteration: string;
    answer: CalculationResult<Suspicion>;
  }>();
  useEffect(() => {
    if (weighings === undefined || alteration === undefined) return;
    let isWanted = true;
    const rest = setTimeout(async () => {
      const answer = await weighings.suspect(of, alteration);
      if (isWanted && answer !== undefined) setCame({ of, alteration, answer });
    }, settleMs);
    return () => {
      isWanted = false;
      clearTimeout(rest);
    };
  }, [weighings, of, alteration]);
  const isOfThis = came !== undefined && came.alteration === alteration;
  return { answer: isOfThis ? came.answer : undefined, behind: !isOfThis || came.of !== of };
}
