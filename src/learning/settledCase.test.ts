import { expect, test } from 'vitest';
import { piece as pieceSchema } from '../piece/piece.ts';
import { readingIds } from '../piece/readings.ts';
import { readingsLeft } from '../piece/settlement.ts';
import { settledCase } from './settledCase.ts';

const finding = (id: string) => ({ id, sign: id.split('@')[0], part: id.split('@')[1], state: 'present' });
const piece = (settled: object | undefined, more: object = {}) =>
  pieceSchema.parse({
    id: 'one',
    form: 'box',
    findings: { 'mark@board': finding('mark@board'), 'label@lid': finding('label@lid') },
    ...(settled === undefined ? {} : { settled }),
    ...more,
  });
const verdict = { making: 'of-the-period', by: 'document', on: '2026-03-01' };

test('what a verdict leaves', () => {
  expect(readingsLeft({ making: 'later-copy' })).toEqual(['later-bench-copy', 'later-machine-copy']);
  expect(readingsLeft({ making: 'of-the-period', condition: 'period-altered' })).toEqual(['period-altered']);
  expect(readingsLeft({ condition: 'period-altered' })).toEqual(['period-altered']);
  // A condition is asked of period pieces alone.
  expect(readingsLeft({ making: 'to-deceive', condition: 'period-altered' })).toEqual(['made-to-deceive']);
  expect(readingsLeft({})).toEqual(readingIds);
});

test('a settled piece is a case without the findings that its verdict rests on', () => {
  const found = (rests: string[]) =>
    settledCase(piece({ ...verdict, rests }))?.found.findings.map(({ sign }) => sign);
  expect(found([])).toEqual(['mark', 'label']);
  expect(found(['label@lid'])).toEqual(['mark']);
});

test('papers and laboratories count whole, another expert half', () => {
  const weight = (by: string) => settledCase(piece({ ...verdict, by }))?.weight;
  expect([weight('document'), weight('laboratory'), weight('second-expert')]).toEqual([1, 1, 0.5]);
});

test('nothing is learned from a piece that is not settled, from one that came with the program, or from a verdict that says nothing', () => {
  expect(settledCase(piece(undefined))).toBeUndefined();
  expect(settledCase(piece(verdict, { example: true }))).toBeUndefined();
  expect(settledCase(piece({ by: 'document', on: '2026-03-01' }))).toBeUndefined();
});
