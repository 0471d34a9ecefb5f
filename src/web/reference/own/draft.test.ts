import { describe, expect, test } from 'vitest';
import { shop, sign } from '../../../knowledge/schema.ts';
import { type Draft, entryOf, figureTyped, figureWith, idFromName } from './draft.ts';
import { fieldShapes } from './fieldShapes.ts';

describe('the fields of an own entry', () => {
  test('are those of the schema, but for the id', () => {
    expect(fieldShapes('sign').map((field) => field.name)).toEqual(
      Object.keys(sign.shape).filter((name) => name !== 'id'),
    );
    expect(fieldShapes('shop').map((field) => field.name)).toEqual(
      Object.keys(shop.shape).filter((name) => name !== 'id'),
    );
  });

  test('are each drawn by their shape, but for the three that have a way of their own', () => {
    const apart = [...fieldShapes('sign'), ...fieldShapes('shop')]
      .filter((field) => ['rows', 'figures', 'lists'].includes(field.as))
      .map((field) => field.name);
    expect(apart).toEqual(['when', 'shows', 'habits']);
  });

  test('know what kind of field each is', () => {
    const as = Object.fromEntries(fieldShapes('sign').map((field) => [field.name, field.as]));
    expect(as).toMatchObject({
      name: 'text',
      on: 'list',
      formFamilies: 'several',
      needs: 'choice',
      minutes: 'number',
      span: 'object',
      shows: 'figures',
      basis: 'object',
    });
    const ofShop = Object.fromEntries(fieldShapes('shop').map((field) => [field.name, field.as]));
    expect(ofShop).toMatchObject({ share: 'figure', years: 'years', habits: 'rows', invented: 'flag' });
  });
});

describe('what is written of an own entry', () => {
  const draft: Draft = {
    name: ' A cross in chalk ',
    look: 'A cross in old chalk inside the leg.',
    on: ['front-leg'],
    hangsOn: 'making',
    minutes: '0,5',
    caution: '',
    mistakenFor: [],
    when: { legs: ['cabriole'], seat: [] },
    shows: { period: '10, 4–20', 'bench-copy': ' 2, .5–5', 'machine-copy': '', 'to-deceive': '5, 2–10' },
    basis: { by: 'judgement', why: 'Seen on four chairs of one house.' },
    span: { earliest: '', commonFrom: '' },
  };

  test('becomes an entry that fits the schema: numbers read, blanks left out', () => {
    const entry = entryOf(fieldShapes('sign'), draft);
    expect(Object.keys(entry)).not.toContain('span');
    expect(Object.keys(entry)).not.toContain('caution');
    expect(entry).toMatchObject({
      name: 'A cross in chalk',
      minutes: 0.5,
      when: { legs: ['cabriole'] },
      shows: { period: '10, 4–20', 'bench-copy': '2, 0.5–5', 'to-deceive': '5, 2–10' },
    });
    expect(sign.safeParse({ id: 'own-chalk', ...entry }).success).toBe(true);
  });

  test('keeps what is no number as it was typed, so that its fault is said', () => {
    expect(entryOf(fieldShapes('sign'), { minutes: 'soon' })).toMatchObject({ minutes: 'soon' });
    expect(entryOf(fieldShapes('shop'), { years: ['1760', ''] })).toMatchObject({ years: [1760, ''] });
  });

  test('is the same again when an entry is opened and kept unchanged', () => {
    const entry = entryOf(fieldShapes('sign'), draft);
    expect(entryOf(fieldShapes('sign'), entry)).toEqual(entry);
  });
});

test('a figure is three numbers, and what else it says stays with it', () => {
  expect(figureTyped('86, 72–94')).toEqual({ best: '86', low: '72', high: '94' });
  expect(figureTyped(undefined)).toEqual({ best: '', low: '', high: '' });
  expect(figureTyped(figureWith('', { best: '8', low: '', high: '' }))).toEqual({
    best: '8',
    low: '',
    high: '',
  });
  expect(figureWith({ in100: '1, 0.5–2', why: 'Counted.' }, { best: '3', low: '1', high: '5' })).toEqual({
    in100: '3, 1–5',
    why: 'Counted.',
  });
});

test('an id is made from the name, and never one that is in use', () => {
  expect(idFromName('Écharpe in  chalk!', new Set())).toBe('own-echarpe-in-chalk');
  expect(idFromName('Chalk', new Set(['own-chalk', 'own-chalk-2']))).toBe('own-chalk-3');
  expect(idFromName('   ', new Set())).toBe('own-entry');
});
