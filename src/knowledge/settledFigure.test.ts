import { expect, test } from 'vitest';
import { groundsInWords } from './groundsInWords.ts';
import { settledFigure } from './settledFigure.ts';

test('2.3 of 3.1 move 40, 20–60 to 45.8, 27.4–64.7, as worked on paper', () => {
  // 40, 20–60 is Beta(6.094, 9.141); with the counts Beta(8.394, 9.941), mean 0.4578; percentiles by summing the density.
  const moved = settledFigure({ in100: '40, 20–60' }, { seen: 2.3, of: 3.1, cases: 4 });
  expect(moved.in100).toBe('45.8, 27.4–64.7');
  expect(groundsInWords(moved)).toBe('from 4 settled cases of your own: 2.3 of 3.1; before: 40, 20–60');
});

test('ever so many cases count for no more than the figure did', () => {
  // A hundred of a hundred held at 15.235: Beta(21.329, 9.141), mean 0.7.
  const moved = settledFigure({ in100: '40, 20–60' }, { seen: 100, of: 100, cases: 100 });
  expect(moved.in100.split(', ')[0]).toBe('70');
  const more = settledFigure({ in100: '40, 20–60' }, { seen: 1000, of: 1000, cases: 1000 });
  expect(more.in100).toBe(moved.in100);
});

test('a figure without a range, or of which nothing was counted, stays as it is', () => {
  const sure = { in100: '40, 40–40' };
  expect(settledFigure(sure, { seen: 1, of: 1, cases: 1 })).toBe(sure);
  const never = { in100: '0, 0–0' };
  expect(settledFigure(never, { seen: 1, of: 1, cases: 1 })).toBe(never);
  const some = { in100: '40, 20–60' };
  expect(settledFigure(some, { seen: 0, of: 0, cases: 0 })).toBe(some);
});

test('a single case still shows, and is told as one', () => {
  const moved = settledFigure({ in100: '50, 45–55' }, { seen: 1, of: 1, cases: 1 });
  expect(moved.in100.split(', ')[0]).toBe('50.2');
  expect(groundsInWords(moved)).toBe('from 1 settled case of your own: 1 of 1; before: 50, 45–55');
});
