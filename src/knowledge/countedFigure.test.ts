import { expect, test } from 'vitest';
import { plant } from '../../test/architecture/plantedKnowledge.ts';
import { soundKnowledge } from '../../test/architecture/soundKnowledge.ts';
import { compileKnowledge } from './compileKnowledge.ts';
import { countedFigure } from './countedFigure.ts';
import type { Figure } from './figureSchema.ts';
import { groundsInWords } from './groundsInWords.ts';
import { onWhoseWord } from './onWhoseWord.ts';
import { readEntries } from './readEntries.ts';

const how = { recordWeighs: 0.3, judgedAtMost: 20 };
const counted = (in100: string, seen: number, of: number): Figure => ({
  in100,
  counts: { seen, of, where: 'stools in two museums', source: 'saw-book' },
});

test('ten of ten records move 50, 30–70 to 58, 39–76, as worked on paper', () => {
  // Judged: Beta(7.956, 7.956). Ten records at 0.3: Beta(10.956, 7.956), mean 0.5793; percentiles by summing the density.
  const figure = countedFigure(counted('50, 30–70', 10, 10), how);
  expect(figure.in100).toBe('58, 39–76');
  expect(figure.judged).toBe('50, 30–70');
});

test('a judgment that claims more than twenty records counts for twenty', () => {
  // 50, 45–55 alone is Beta(134.8, 134.8); held at Beta(10, 10), ten records at 0.3 make Beta(13, 10), mean 0.5652.
  expect(countedFigure(counted('50, 45–55', 10, 10), how).in100).toBe('57, 40–73');
});

test('none of thirty lowers a rare thing and never makes it impossible', () => {
  // 1.5, 0.4–5 held at 20: Beta(0.3, 19.7); thirty records without it: Beta(0.3, 28.7), mean 0.0103.
  const [best, range] = countedFigure(counted('1.5, 0.4–5', 0, 30), how).in100.split(', ');
  expect(best).toBe('1');
  expect(Number(range?.split('–')[0])).toBeGreaterThan(0);
});

test('a figure with no count, or with no range, stays as it is', () => {
  expect(countedFigure({ in100: '50, 30–70' }, how)).toEqual({ in100: '50, 30–70' });
  expect(countedFigure(counted('50, 50–50', 1, 2), how).in100).toBe('50, 50–50');
});

const files = plant({
  planted: 'a count',
  file: 'shops/mill-lane.yaml',
  edit: [
    'shows: "90, 70–97"',
    'shows: { in100: "50, 30–70", by: judgement, counts: { seen: 10, of: 10, where: stools in two museums, source: saw-book } }',
  ],
  entry: 'mill-lane',
  onLine: '',
});

test('compiled knowledge holds the figure with its count taken in, and says so in words', () => {
  const { knowledge, faults } = compileKnowledge(files);
  expect(faults).toEqual([]);
  const shows = knowledge?.shops['mill-lane']?.habits[0]?.shows;
  expect(shows?.in100).toBe('58, 39–76');
  expect(shows === undefined ? '' : groundsInWords(shows)).toBe(
    'counted: 10 of 10 stools in two museums; judged before counting: 50, 30–70',
  );
});

test('such a figure counts as counted, no more as judged', () => {
  const before = onWhoseWord(readEntries(soundKnowledge).entries).figures;
  const after = onWhoseWord(readEntries(files).entries).figures;
  expect([after.counted - before.counted, after.judgement - before.judgement]).toEqual([1, -1]);
});
