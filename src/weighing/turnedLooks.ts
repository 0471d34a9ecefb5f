import { measuredByState } from '../evidence/measuredLook.ts';
import type { Look } from '../evidence/preparedCase.ts';
import { inSentence } from '../knowledge/inSentence.ts';
import { stateNames } from '../knowledge/stateNames.ts';

/** A finding seen otherwise: the look it would then be, and what would have been otherwise, after “if it had”. */
export type Turned = { look: Look; otherwise: Look; words: string };

/**
 * Every way a finding could have come out otherwise. What was seen is turned from there to not there and back; a measurement
 * speaks as strongly for the other side as it did for its own, and where it speaks of several states, for each of the others.
 */
export function turnedLooks(look: Look): Turned[] {
  if (look.byState !== undefined) return turnedStates(look, look.byState);
  const state = look.state === 'present' ? 'absent' : 'present';
  if (look.measured === undefined) {
    const words = state === 'present' ? 'been there' : 'not been there';
    return [{ look, otherwise: { ...look, state }, words }];
  }
  const { ifThere, ifNot } = look.measured;
  const otherwise: Look = { ...look, state, measured: { ifThere: ifNot, ifNot: ifThere } };
  return [{ look, otherwise, words: 'been measured as strongly the other way' }];
}

function turnedStates(look: Look, byState: Readonly<Record<string, number>>): Turned[] {
  const states = Object.keys(byState);
  const share = (state: string) => byState[state] ?? 0;
  const best = states.reduce((a, b) => (share(b) > share(a) ? b : a));
  return states
    .filter((state) => share(state) < share(best))
    .map((state) => ({
      look,
      otherwise: measuredByState(look, { ...byState, [state]: share(best), [best]: share(state) }),
      words: `been measured as strongly for “${inSentence(stateNames[state] ?? state)}”`,
    }));
}
