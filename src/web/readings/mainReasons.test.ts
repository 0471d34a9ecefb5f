import { describe, expect, it } from 'vitest';
import { mainReasons } from './mainReasons.ts';
import { speaksAltogether } from './speaksFor.ts';

const weight = (sign: string, alone: number, withinWhole = alone) => ({
  sign,
  part: null,
  state: 'present' as const,
  alone,
  withinWhole,
  againstRival: 0,
  periodAgainstLater: { alone: 0, withinWhole: 0 },
  words: '',
});

describe('what the leading reading rests on', () => {
  const weights = [
    weight('peg', 8),
    weight('dowel', -17),
    weight('wear', 3),
    weight('mute', 0.2),
    weight('stamp', -25),
  ];

  it('tells both sides, heaviest first', () => {
    const { forIt, againstIt } = mainReasons({ weights });
    expect(forIt.map((each) => each.sign)).toEqual(['peg', 'wear']);
    expect(againstIt.map((each) => each.sign)).toEqual(['stamp', 'dowel']);
  });

  it('names first what the whole hangs on, even where it speaks the other way by itself', () => {
    const { forIt, againstIt } = mainReasons({
      weights: [weight('peg', 8, 0.4), weight('dovetail', -2, 11), weight('stretcher', 5, 6)],
    });
    expect(forIt.map((each) => each.sign)).toEqual(['dovetail', 'stretcher', 'peg']);
    expect(againstIt).toEqual([]);
  });

  it('says when all else turns a finding to the other side', () => {
    expect(speaksAltogether(weight('dovetail', -13, 6), 'period-repaired')).toBe(
      'by itself speaks moderately for another reading, but with all else it speaks weakly for a period piece with later repairs',
    );
    expect(speaksAltogether(weight('dovetail', -13, -0.2), 'period-repaired')).toBe(
      'speaks moderately for another reading',
    );
    expect(speaksAltogether(weight('chalk', 0.8, 4.5), 'period-repaired')).toBe(
      'speaks weakly for a period piece with later repairs, with all else taken in',
    );
  });
});
