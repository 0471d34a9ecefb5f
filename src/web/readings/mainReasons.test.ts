import { describe, expect, it } from 'vitest';
import { mainReasons } from './mainReasons.ts';
import { speaksAltogether } from './speaksFor.ts';

const weight = (sign: string, alone: number, withinWhole = alone) => ({
  sign,
  part: null,
  state: 'present' as const,
  alone,
  withinWhole,
  words: '',
  forLeading: 0,
});

describe('what the leading reading rests on', () => {
  const weights = [
    weight('peg', 8),
    weight('dowel', -17),
    weight('wear', 3),
    weight('mute', 0.2),
    weight('stamp', -25),
  ];

  it('tells both sides, heaviest first, for a later reading', () => {
    const { forIt, againstIt } = mainReasons({ leading: 'later-machine-copy', weights });
    expect(forIt.map((each) => each.sign)).toEqual(['stamp', 'dowel']);
    expect(againstIt.map((each) => each.sign)).toEqual(['peg', 'wear']);
  });

  it('and for a period reading', () => {
    expect(mainReasons({ leading: 'period-repaired', weights }).forIt.map((each) => each.sign)).toEqual([
      'peg',
      'wear',
    ]);
  });

  it('names first what the whole hangs on, even where it speaks the other way by itself', () => {
    const { forIt, againstIt } = mainReasons({
      leading: 'period-repaired',
      weights: [weight('peg', 8, 0.4), weight('dovetail', -2, 11), weight('stretcher', 5, 6)],
    });
    expect(forIt.map((each) => each.sign)).toEqual(['dovetail', 'stretcher', 'peg']);
    expect(againstIt).toEqual([]);
  });

  it('says when all else turns a finding to the other side', () => {
    expect(speaksAltogether(weight('dovetail', -13, 6))).toBe(
      'by itself speaks moderately for a later piece, but with all else it speaks weakly for a period piece',
    );
    expect(speaksAltogether(weight('dovetail', -13, -0.2))).toBe('speaks moderately for a later piece');
    expect(speaksAltogether(weight('chalk', 0.8, 4.5))).toBe(
      'speaks weakly for a period piece, with all else taken in',
    );
  });
});
