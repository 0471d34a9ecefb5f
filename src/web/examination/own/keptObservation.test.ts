import { expect, it } from 'vitest';
import { foldEvents } from '../../../piece/fold.ts';
import { piece } from '../../../piece/piece.ts';
import { begunObservation, blankObservation, keepObservation } from './keptObservation.ts';
import { recordObservation, stateLookedOver, withdrawObservation } from './observationActs.ts';

function store(): Storage {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
    removeItem: (key: string) => kept.delete(key),
  } as unknown as Storage;
}

it('finds an observation again as it was being written, by its piece, until it is let go', () => {
  const here = store();
  const draft = { ...blankObservation('rail'), words: 'Cut d' };
  keepObservation('p', draft, here);
  expect(begunObservation('p', here)).toEqual(draft);
  expect(begunObservation('q', here)).toBeUndefined();
  keepObservation('p', undefined, here);
  expect(begunObservation('p', here)).toBeUndefined();
});

it('is recorded with the word that was chosen for each kind of piece, and withdrawn again', () => {
  const { expected } = blankObservation(undefined);
  const told = {
    id: 'o',
    words: ' Cut down. ',
    expected: { ...expected, faked: 'often' as const },
    photos: [],
  };
  const open = { id: 'p', form: 'side-chair' };
  const one = foldEvents(open, [recordObservation(told), stateLookedOver(true)]);
  expect(piece.parse(one)).toMatchObject({
    lookedOver: true,
    observations: { o: { words: 'Cut down.', expected: { original: 'sometimes', faked: 'often' } } },
  });
  expect(piece.parse(foldEvents(one, [withdrawObservation('o')])).observations).toEqual({});
});
