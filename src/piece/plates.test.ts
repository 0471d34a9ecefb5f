import { expect, it } from 'vitest';
import { photo } from './photo.ts';
import { platesOf } from './plates.ts';

const kept = (id: string, asPlate = true) =>
  photo.parse({
    id,
    asPlate,
    sha256: 'a'.repeat(64),
    mediaType: 'image/jpeg',
    name: `${id}.jpg`,
    bytes: 1,
    widthPx: 1,
    heightPx: 1,
  });

it('numbers the printed photos in the order given, and gives the others a place but no number', () => {
  const photos = { d: kept('d'), a: kept('a'), c: kept('c', false), b: kept('b') };
  const plates = platesOf({ photos, plateOrder: ['b', 'gone', 'c', 'b'] });
  expect(plates.map((each) => [each.photo.id, each.plate, each.called])).toEqual([
    ['b', 1, 'Plate 1'],
    ['c', undefined, 'Photo not printed'],
    ['a', 2, 'Plate 2'],
    ['d', 3, 'Plate 3'],
  ]);
});
