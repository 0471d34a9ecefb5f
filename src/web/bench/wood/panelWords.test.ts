import { describe, expect, it } from 'vitest';
import { type PanelLossFound, panelWords } from './panelWords.ts';

const found: PanelLossFound = {
  expected: { lossMm: 6.35, sdMm: 1, rangeMm: [4.35, 8.35] },
  recent: { lossMm: -0.6, sdMm: 1.2, rangeMm: [-3, 1.8] },
  direction: 'front to back',
  shows: 'a gap behind the front',
  drawing: { shape: 'rectangle', alongMm: 880, acrossAtMakingMm: 440, acrossNowMm: 433.65 },
  likelihoodRatio: null,
};

describe('a panel’s loss in words', () => {
  it('says what old and recent work would have lost, and where to look', () => {
    expect(panelWords(found, 'Pine, eastern white', undefined)).toBe(
      'Of old make and eastern white pine it should have lost 1/4 in (6.4 mm) front to back, give or take 2.0 mm; of recent make it would have swelled by 0.6 mm, give or take 2.4 mm. Look for a gap behind the front.',
    );
  });

  it.each([
    [6, 'That fits old work. That is 8.0 times as probable of old work'],
    [12, 'more than the wood would explain'],
    [0.5, 'less than old work would show'],
  ])('holds a seen loss of %s mm against it', (seenMm, words) => {
    expect(panelWords({ ...found, likelihoodRatio: 8 }, 'Pine', seenMm)).toContain(words);
  });
});
