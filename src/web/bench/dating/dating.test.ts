import { describe, expect, it } from 'vitest';
import { type DatingFound, datingWords } from './datingWords.ts';
import { ownSign, signsToDate } from './readSigns.ts';

describe('dated signs as they are typed', () => {
  it('lets one year stand for both ends of a beginning or an ending', () => {
    const typed = [
      { ...ownSign(), name: 'screw', earliest: '1815', commonFrom: '1830' },
      { ...ownSign(), name: 'veneer', latest: '1880' },
      { ...ownSign(), sign: 'saw-arcs' },
      ownSign(),
    ];
    expect(signsToDate(typed)).toEqual({
      faults: [],
      signs: [
        { name: 'screw', introduced: { earliest: 1815, commonFrom: 1830 } },
        { name: 'veneer', phasedOut: { commonUntil: 1880, latest: 1880 } },
        { sign: 'saw-arcs' },
      ],
    });
  });

  it('says which year can’t be read', () => {
    const { signs, faults } = signsToDate([{ ...ownSign(), earliest: 'c. 1800' }]);
    expect(signs).toEqual([]);
    expect(faults).toEqual(['Sign 1, earliest: write a year in four figures, such as 1830.']);
  });
});

describe('a span in words and as a curve', () => {
  const found: DatingFound = {
    p50: [1832.2, 1849.6],
    p90: [1820.4, 1871],
    median: 1842,
    mean: 1843,
    sd: 15,
    density: [
      [1800, 0],
      [1820, 0.01],
      [1840, 0.02],
      [1860, 0.01],
      [1900, 0],
    ],
    binding: [{ sign: 'screw', end: 'from', byYears: 57.2 }],
  };

  it('names the sign that holds an end', () => {
    expect(datingWords(found, (sign) => `${sign} type`)).toBe(
      'Very probably between 1820 and 1871 (90 in 100); as probably as not between 1832 and 1850 (50 in 100). The early end is held by “screw type” (by 57 years).',
    );
  });
});
