import { resolve } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { compileKnowledge } from '../../../knowledge/compileKnowledge.ts';
import { readKnowledgeFolder } from '../../../knowledge/readKnowledge.ts';
import type { Knowledge } from '../../../knowledge/schema.ts';
import { directionOf } from './directionOf.ts';
import { type Across, grainSpeaksOf } from './speaksOfGrain.ts';
import { type KindLikelihoods, marksSpeakOf, ratioWords } from './speaksOfMarks.ts';

const held: { knowledge?: Knowledge } = {};
beforeAll(async () => {
  const { knowledge } = compileKnowledge(await readKnowledgeFolder(resolve('knowledge')));
  if (knowledge === undefined) throw new Error('the knowledge files have faults');
  held.knowledge = knowledge;
});

const even: KindLikelihoods = {
  'hand-planed': 1,
  'rotary-planer': 1,
  'straight-saw': 1,
  'circular-saw': 1,
  'band-saw': 1,
  sliced: 1,
};

test('every sign that the tools speak of is in the knowledge, and so is that a board of two trees breaks off', () => {
  const signs = [
    ...(['cuff', 'leg', 'veneer'] as Across[]).flatMap((across) => grainSpeaksOf(across, 2)?.signs ?? []),
    ...marksSpeakOf(even).map(({ sign }) => sign),
    'twins-from-a-pattern',
    'bare-wood-darkened',
  ];
  expect(signs.filter((sign) => held.knowledge?.signs[sign] === undefined)).toEqual([]);
});

test('grain that goes on speaks for the sign of one piece and against those of two', () => {
  // By the words of each sign: grain that comes out below the cuff is one stick; grain that breaks off at a line is two.
  expect(grainSpeaksOf('cuff', 20)?.likelihoods).toEqual({ present: 1, absent: 1 / 20 });
  expect(grainSpeaksOf('leg', 20)?.likelihoods).toEqual({ present: 1 / 20, absent: 1 });
  expect(grainSpeaksOf('leg', 1 / 20)?.likelihoods).toEqual({ present: 1, absent: 1 / 20 });
  expect(grainSpeaksOf('veneer', 0.1)?.likelihoods.present).toBe(1);
  expect(grainSpeaksOf('other', 20)).toBeUndefined();
});

test('a kind that is ten times as probable as the others speaks ten to one for its sign, and against the others', () => {
  const found = marksSpeakOf({ ...even, 'circular-saw': 10 });
  expect(found[0]).toMatchObject({ sign: 'saw-arcs-circular', ratio: 10 });
  // (1 mean) against the mean of 10, 1, 1, 1, 1: 14 / 5
  expect(found.find(({ sign }) => sign === 'planer-ripple')?.ratio).toBeCloseTo(5 / 14, 12);
  // the mean of circular and band, 5.5, against 1
  expect(found.find(({ sign }) => sign === 'veneer-sawn-by-machine')?.ratio).toBeCloseTo(5.5, 12);
  expect(marksSpeakOf(even).every(({ ratio }) => ratio === 1)).toBe(true);
});

test('ratios keep their side in words', () => {
  expect([12.4, 1.5, 1, 0.25].map(ratioWords)).toEqual([
    '12 to 1 for',
    '1.5 to 1 for',
    'neither for nor against',
    '4 to 1 against',
  ]);
});

test('a line has one direction, whichever end was touched first', () => {
  expect(
    directionOf([
      [0, 0],
      [0, 9],
    ]),
  ).toBe(90);
  expect(
    directionOf([
      [0, 9],
      [0, 0],
    ]),
  ).toBe(90);
  expect(
    directionOf([
      [5, 5],
      [1, 1],
    ]),
  ).toBeCloseTo(45, 9);
  expect(
    directionOf([
      [5, 5],
      [5, 5],
    ]),
  ).toBeUndefined();
});
