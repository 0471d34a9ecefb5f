import { expect, it } from 'vitest';
import { smallKnowledge } from '../../../evidence/testing/smallKnowledge.ts';
import type { Observation } from '../../../piece/observation.ts';
import { expectedAtFirst } from '../../../piece/observationWords.ts';
import { signFromObservation } from './signFromObservation.ts';

const { making } = smallKnowledge();
const drafted = (expected: Partial<Observation['expected']>) =>
  signFromObservation(
    { words: 'A second scribe line', expected: { ...expectedAtFirst, ...expected } },
    'rail',
    making,
  );

it('takes words and place over, as a sentence where a sentence is asked for', () => {
  expect(drafted({})).toMatchObject({
    name: 'A second scribe line',
    look: 'A second scribe line.',
    on: ['rail'],
  });
});

it('takes the cause and its figures where the words part the kinds of piece by one cause alone', () => {
  const byMaking = drafted({ copied: 'often', faked: 'seldom' });
  expect(byMaking).toMatchObject({
    hangsOn: 'making',
    shows: {
      period: '30, 16–46',
      'bench-copy': '60, 42–76',
      'machine-copy': '60, 42–76',
      'to-deceive': '12, 5–22',
    },
  });
  expect(drafted({ repaired: 'nearly always' })).toMatchObject({
    hangsOn: 'origin',
    shows: {
      'of-the-making': '30, 16–46',
      repair: '90, 78–97',
      improve: '30, 16–46',
      'other-old': '30, 16–46',
    },
  });
});

it('leaves cause and figures to the examiner where they part it by both, or by nothing', () => {
  for (const expected of [{}, { copied: 'often', repaired: 'often' }] as const) {
    expect(drafted(expected)).not.toHaveProperty('hangsOn');
    expect(drafted(expected)).not.toHaveProperty('shows');
  }
});
