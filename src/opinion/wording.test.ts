import { describe, expect, it } from 'vitest';
import { piece } from '../piece/piece.ts';
import { decibanWords, isExamined, paragraphs, shopName, stopped } from './wording.ts';

describe('what was typed', () => {
  it('is set in paragraphs, by whatever ends a line, without empty ones', () => {
    expect(paragraphs('One.\r\nTwo.\nThree.\rFour.\u2028Five.\u2029Six.')).toEqual([
      'One.',
      'Two.',
      'Three.',
      'Four.',
      'Five.',
      'Six.',
    ]);
    expect(paragraphs('  One. \n\n \t\n Two.')).toEqual(['One.', 'Two.']);
    expect(paragraphs(' \n ')).toEqual([]);
  });

  it('ends with a stop, unless it ends with one or is nothing', () => {
    expect(stopped(' A chair ')).toBe('A chair.');
    for (const end of ['.', '?', '!', '…', ':', '”', '"', '’', ')'])
      expect(stopped(`A chair${end} `)).toBe(`A chair${end}`);
    expect(stopped('A chair, “old”, of oak')).toBe('A chair, “old”, of oak.');
    expect(stopped('  ')).toBe('');
  });
});

describe('a piece that was examined', () => {
  const nothing = piece.parse({ id: 'one', form: 'side-chair' });

  it('has a day on which it was, or something found', () => {
    expect(isExamined(nothing)).toBe(false);
    expect(isExamined({ ...nothing, engagement: { ...nothing.engagement, examinedOn: '2026-11-25' } })).toBe(
      true,
    );
    const found = { a: { id: 'a', sign: 'a', part: 'top', state: 'present' } };
    expect(isExamined(piece.parse({ id: 'one', form: 'side-chair', findings: found }))).toBe(true);
  });
});

describe('a weight in words', () => {
  it('is whole decibans with a sign of its own, nothing where it rounds to nothing', () => {
    expect([3.4, 3.5, -3.4, -3.6, 12].map(decibanWords)).toEqual(['+3', '+4', '−3', '−4', '+12']);
    expect([0, 0.4, -0.4, -0.5].map(decibanWords)).toEqual(['0', '0', '0', '0']);
  });
});

describe('a shop in a sentence', () => {
  it('has a small article, and is said to be invented where it is, once', () => {
    expect(shopName({ name: 'The Harbor Shop' })).toBe('the Harbor Shop');
    expect(shopName({ name: 'Shop of The Harbor' })).toBe('Shop of The Harbor');
    expect(shopName({ name: 'The Harbor Shop', invented: true })).toBe('the Harbor Shop (invented)');
    expect(shopName({ name: 'An Invented Shop', invented: true })).toBe('An Invented Shop');
    expect(shopName({ name: 'Theodore’s', invented: false })).toBe('Theodore’s');
  });
});
