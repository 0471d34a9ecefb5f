import { describe, expect, it } from 'vitest';
import { setsSize } from '../../../calculations/sets.ts';
import { setsLikeness } from '../../../calculations/setsLikeness.ts';
import { outputOf } from '../../../calculations/testing/outputOf.ts';
import { likenessWords } from './likenessWords.ts';
import { readNumerals } from './readNumerals.ts';
import { shareWithin, sizesDrawn, sizeWords, turnedWords } from './sizeWords.ts';

describe('the size of a set in words', () => {
  const { numbers } = readNumerals('III VII XI');
  const size = outputOf(setsSize, { numbersSeen: [3, 7, 11], prior: { max: 24 } });

  // By hand: sizes N from 11 to 24 weigh 1/C(N, 3), and those up to N together 1/90 − 1/(N(N − 1)), of 1/90 − 1/552 in all:
  // 0.5055 up to 13, 0.9621 up to 22, 0.9386 up to 21.
  it('says what was seen, the least, the median and the span with what it holds', () => {
    expect(sizeWords(size, numbers)).toBe(
      'With III, VII, XI seen, the set had at least 11 pieces: as probably as not no more than 13 (51 in 100); very probably between 11 and 22 (96 in 100).',
    );
  });

  it('claims no less than the span was made for where the list of sizes ends early', () => {
    const cut = { posterior: [[2, 0.3] as [number, number], [3, 0.1] as [number, number]] };
    expect(shareWithin(cut, [2, 40], 0.9)).toBe(0.9);
    expect(shareWithin(cut, [3, 3], 0)).toBe(0.1);
  });

  it('draws the span that is told and somewhat beyond, and no more than there is room for', () => {
    const drawn = sizesDrawn(size, 120).map(([n]) => n);
    expect(drawn[0]).toBe(11);
    expect(drawn.at(-1)).toBeGreaterThanOrEqual(size.p90[1]);
    expect(sizesDrawn(size, 5)).toHaveLength(5);
  });

  it('warns of a numeral that is another from the other side', () => {
    expect(turnedWords(numbers)).toBe(
      'Read from the other side, XI (11) is 9: make sure which way up it was cut.',
    );
    expect(turnedWords(readNumerals('III, 11').numbers)).toBe('');
  });
});

describe('members side by side in words', () => {
  const side = (id: string, width: number) => ({
    id,
    kind: 'side chair',
    measures: { 'Seat width, front': width },
  });
  const members = [500, 501, 499, 500, 530].map((width, at) => side(`N${at + 1}`, width));

  it('names who stands out, who goes together, and the armchair that is no wider', () => {
    const arm = { id: 'A', kind: 'armchair', measures: { 'Seat width, front': 502 } };
    const said = likenessWords(outputOf(setsLikeness, { members: [...members, arm] }));
    expect(said).toContain(
      'N5 stands out in seat width, front: 20 7/8 in where the others have about 19 11/16 in.',
    );
    expect(said).toContain('N1, N2, N3 and N4 go together; N5 and A stand alone.');
    expect(said).toMatch(/The armchairs’ seats are 1\/16 in wider \(2 mm, give or take \d+ mm\)\./);
  });

  it('judges nothing by a catalogue', () => {
    const said = likenessWords(outputOf(setsLikeness, { members, source: 'catalogue' }));
    expect(said).toContain('nothing is judged by them');
    expect(said).not.toContain('stands out');
  });
});
