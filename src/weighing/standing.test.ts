import { expect, it } from 'vitest';
import { originInWords, standingOf } from './standing.ts';

const old = { 'of-the-making': 0.96, repair: 0.03, improve: 0.01, 'other-old': 0 };

it('calls a part by its most probable origin once it was looked at, and only from 70 in 100', () => {
  expect(standingOf(old, 2, 2)).toEqual({
    standing: 'of-the-making',
    words: 'Very probably original (96 in 100).',
  });
  expect(standingOf({ ...old, 'of-the-making': 0.69, repair: 0.3 }, 1, 1)).toMatchObject({
    standing: 'unsure',
    words: 'Unsure; more probably than not original (69 in 100), anything else less so.',
  });
  expect(originInWords({ 'of-the-making': 0.32, repair: 0.4, improve: 0.28 })).toBe(
    'Unsure; less probably than not a later repair or renewal (40 in 100), anything else less so.',
  );
  expect(standingOf({ ...old, 'of-the-making': 0.1, repair: 0.8 }, 1, 1).standing).toBe('repair');
  expect(standingOf({ 'of-the-making': 0.7, repair: 0.3 }, 1, 1)).toEqual({
    standing: 'of-the-making',
    words: 'Probably original (70 in 100).',
  });
  expect(originInWords({ 'of-the-making': 0.5, repair: 0.5 })).toMatch(
    /^Unsure; as probably as not original/,
  );
});

it('calls a part nothing where no sign on it was answered, and unsure where none could be told', () => {
  expect(standingOf(old, 0, 0)).toEqual({ standing: 'not-looked-at', words: 'Not looked at.' });
  const untold = standingOf(old, 2, 0);
  expect(untold.standing).toBe('unsure');
  expect(untold.words).toMatch(/^Looked at, but nothing could be told\./);
});

it('never says more than 999 in 1000', () => {
  expect(originInWords({ ...old, 'of-the-making': 1, repair: 0 })).toBe(
    'Almost certainly original (999 in 1000).',
  );
});
