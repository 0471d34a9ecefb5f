import { expect, test } from 'vitest';
import { parseYaml } from './parseYaml.ts';

const text = `works:
  - id: one
    title: "A colon: in quotes"
    issued: 2020-01-02

  - id: two   # a note
    shows:
      no: yes
      list: [a,
             b]
`;

test('YAML 1.2 core: no and yes are words, a day is text', () => {
  expect(parseYaml(text).value).toEqual({
    works: [
      { id: 'one', title: 'A colon: in quotes', issued: '2020-01-02' },
      { id: 'two', shows: { no: 'yes', list: ['a', 'b'] } },
    ],
  });
});

test.each([
  [[], 1],
  [['works'], 1],
  [['works', 0], 2],
  [['works', 0, 'issued'], 4],
  [['works', 1], 6],
  [['works', 1, 'shows', 'no'], 8],
  [['works', 1, 'shows', 'list', 1], 10],
  // What is missing is at the line of what should hold it.
  [['works', 1, 'shows', 'lost', 'deeper'], 7],
  [['works', 7], 1],
])('the line of %j is %i', (path, line) => {
  expect(parseYaml(text).lineOf(path)).toBe(line);
});

test('a doubled key and a broken quote are faults with their line', () => {
  expect(parseYaml('a: 1\nb: 2\na: 3\n')).toMatchObject({ value: undefined, faults: [{ line: 3 }] });
  expect(parseYaml('a: 1\nb: "no end\n').faults[0]?.line).toBeGreaterThanOrEqual(2);
});

test('an empty file has no value and does not fail', () => {
  expect(parseYaml('')).toMatchObject({ value: null, faults: [] });
  expect(parseYaml('').lineOf(['a'])).toBe(1);
});
