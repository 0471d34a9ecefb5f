import { describe, expect, it } from 'vitest';
import { verbalScale } from '../../evidence/verbalScale.ts';
import { findingWords, heaviestFirst, sayDecibans, speaksFor } from './speaksFor.ts';

describe('what a finding speaks for', () => {
  it('names the side that is favored, never a negative', () => {
    expect(speaksFor(34, 'a period piece', 'a later piece')).toBe('speaks strongly for a period piece');
    expect(speaksFor(-34, 'a period piece', 'a later piece')).toBe('speaks strongly for a later piece');
    expect(speaksFor(0.4, 'a', 'b')).toBe('says nothing either way');
  });

  it('uses the words of the printed scale for every band', () => {
    for (const band of verbalScale.bands.slice(1))
      expect(speaksFor(band.fromDecibans, 'a', 'b')).toContain(band.adverb);
  });

  it('prints whole decibans with their sign', () => {
    expect([12.4, -3.6, 0.2].map(sayDecibans)).toEqual(['+12 db', '−4 db', '0 db']);
  });

  it('says where and what was found', () => {
    expect(findingWords('Pegged tenons', 'left side rail', 'absent')).toBe(
      '“Pegged tenons” on the left side rail, looked for and not there,',
    );
    expect(findingWords('Size', 'the whole piece', 'present')).toBe('“Size” on the whole piece');
  });

  it('puts the heaviest first on either side', () => {
    const weight = (sign: string, withinWhole: number) => ({
      sign,
      part: null,
      state: 'present' as const,
      alone: 0,
      withinWhole,
      againstRival: 0,
      periodAgainstLater: { alone: 0, withinWhole: 0 },
      words: '',
    });
    expect(
      heaviestFirst([weight('a', 2), weight('b', -9), weight('c', 5)], 'withinWhole').map(
        (each) => each.sign,
      ),
    ).toEqual(['b', 'c', 'a']);
  });
});
