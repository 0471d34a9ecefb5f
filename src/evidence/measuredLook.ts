import type { Figure } from '../knowledge/figureSchema.ts';
import { causeStates, type Sign } from '../knowledge/schema.ts';
import type { Look } from './preparedCase.ts';

/** How probable a measurement is where it fits best: no measurement is free of blunders. */
export const mostOfMeasured = 0.99;

/**
 * A finding that was measured, as the model weighs it. Likelihoods of `present` and `absent` take the place of the examiner's
 * report; likelihoods of the states of the sign's cause take the place of the sign's own figures.
 *
 * @param likelihoods  in proportion; at most 99 : 1 counts, since no measurement is free of blunders
 * @returns the look, or why it can't be weighed
 */
export function measuredLook(
  key: string,
  sign: Sign,
  part: string,
  likelihoods: Readonly<Record<string, number>>,
): Look | string {
  const most = Math.max(...Object.values(likelihoods));
  if (!(most > 0)) return 'The measurement makes nothing probable, so there is nothing to weigh.';
  const share = (name: string) => Math.max((likelihoods[name] ?? 0) / most, 1 / 99);
  const look = { key, sign, part, state: 'present', sure: 'plain' } as const;
  if ('present' in likelihoods && 'absent' in likelihoods) {
    const state = share('present') >= share('absent') ? 'present' : 'absent';
    const measured = {
      ifThere: mostOfMeasured * share('present'),
      ifNot: mostOfMeasured * share('absent'),
    };
    return { ...look, state, measured };
  }
  const states = causeStates[sign.hangsOn.replace(/\/.*$/, '')] ?? [];
  const untold = states.filter((state) => !(state in likelihoods));
  if (sign.span !== undefined || states.length === 0 || untold.length > 0) {
    return `The measurement does not say how probable it is under ${untold.join(', ') || 'present and absent'}.`;
  }
  return measuredByState(look, Object.fromEntries(states.map((state) => [state, share(state)])));
}

/** A look whose measurement speaks of the states of the sign’s cause, in proportion to the best: 1 for that. */
export function measuredByState(look: Look, byState: Readonly<Record<string, number>>): Look {
  const shows = Object.fromEntries(
    Object.entries(byState).map(([state, share]) => [state, sureFigure(mostOfMeasured * share)]),
  );
  return { ...look, sign: { ...look.sign, shows }, measured: { ifThere: 1, ifNot: 0 }, byState };
}

/** A figure without a range: the doubt of a measurement is in its likelihoods already. */
function sureFigure(share: number): Figure {
  const in100 = (100 * share).toFixed(6);
  return { in100: `${in100}, ${in100}–${in100}` };
}
