import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it } from 'vitest';
import { photo } from '../../../piece/photo.ts';
import { piece } from '../../../piece/piece.ts';
import { platesOf } from '../../../piece/plates.ts';
import type { ExaminationContext } from '../examinationContext.ts';
import { FindingPhotos } from './FindingPhotos.tsx';
import { PhotoCard } from './PhotoCard.tsx';

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
const of = piece.parse({
  id: 'p',
  form: 'side-chair',
  photos: { a: kept('a'), b: kept('b', false), c: kept('c') },
  plateOrder: ['c', 'b', 'a'],
  findings: {
    'peg@splat': { id: 'peg@splat', sign: 'peg', part: 'splat', state: 'present', photos: ['a', 'b'] },
  },
});
const context = {
  piece: of,
  readOnly: true,
  parts: [],
  knowledge: { signs: {} },
} as unknown as ExaminationContext;

it('numbers the photos of a finding as they are printed', () => {
  const html = renderToStaticMarkup(
    <FindingPhotos context={context} finding={of.findings['peg@splat']} part="splat" choose={false} />,
  );
  expect([...html.matchAll(/alt="([^"]*)"/g)].map(([, words]) => words)).toEqual([
    'Photo not printed: b.jpg',
    'Plate 2: a.jpg',
  ]);
  expect([...html.matchAll(/<span aria-hidden="true">([^<]*)</g)].map(([, words]) => words)).toEqual([
    '–',
    '2',
  ]);
});

it('numbers the cards of the photos as they are printed', () => {
  const cards = platesOf(of).map((plated) =>
    renderToStaticMarkup(
      <PhotoCard context={context} plated={plated} first={false} last={false} onOpen={() => {}} />,
    ),
  );
  expect(cards.map((card) => /aria-label="([^"]*)"/.exec(card)?.[1])).toEqual([
    'Open Plate 1: c.jpg',
    'Open Photo not printed: b.jpg',
    'Open Plate 2: a.jpg',
  ]);
});
