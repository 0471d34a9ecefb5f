import { expect, it } from 'vitest';
import { measuredByState } from '../evidence/measuredLook.ts';
import type { Look } from '../evidence/preparedCase.ts';
import { smallKnowledge } from '../evidence/testing/smallKnowledge.ts';
import { turnedLooks } from './turnedLooks.ts';

const { signs } = smallKnowledge();
const look = (state: Look['state'] = 'present'): Look => ({
  key: 'saw-arcs@rail',
  sign: signs['saw-arcs'] as Look['sign'],
  part: 'rail',
  state,
  sure: 'plain',
});

it('turns what was seen from there to not there and back', () => {
  expect(turnedLooks(look())).toEqual([{ look: look(), otherwise: look('absent'), words: 'not been there' }]);
  expect(turnedLooks(look('absent'))).toEqual([
    { look: look('absent'), otherwise: look('present'), words: 'been there' },
  ]);
});

it('turns a measurement to speak as strongly for the other side', () => {
  const measured = { ...look(), measured: { ifThere: 0.99, ifNot: 0.11 } };
  expect(turnedLooks(measured)).toEqual([
    {
      look: measured,
      otherwise: { ...look('absent'), measured: { ifThere: 0.11, ifNot: 0.99 } },
      words: 'been measured as strongly the other way',
    },
  ]);
});

it('turns a measurement of the cause to each other state that it speaks less for', () => {
  const byState = { hand: 1, 'early-machine': 0.5, 'modern-machine': 0.1, unheard: 1 };
  const measured = measuredByState(look(), byState);
  const told = turnedLooks(measured);
  // The two as probable as each other are the best: neither is turned to.
  expect(told.map(({ words }) => words)).toEqual([
    'been measured as strongly for “early machine work”',
    'been measured as strongly for “modern machine work”',
  ]);
  expect(told.map(({ otherwise }) => otherwise.byState)).toEqual([
    { ...byState, hand: 0.5, 'early-machine': 1 },
    { ...byState, hand: 0.1, 'modern-machine': 1 },
  ]);
  expect(told[0]?.look).toBe(measured);
  // What it speaks for most need not stand first.
  const last = turnedLooks(measuredByState(look(), { hand: 0.1, 'early-machine': 1 }));
  expect(last.map(({ otherwise }) => otherwise.byState)).toEqual([{ hand: 1, 'early-machine': 0.1 }]);
  // A state that has no name of its own is called as it is written.
  const other = turnedLooks(measuredByState(look(), { hand: 1, unheard: 0.2 }));
  expect(other.map(({ words }) => words)).toEqual(['been measured as strongly for “unheard”']);
});
