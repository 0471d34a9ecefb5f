import type { Piece } from '../piece/piece.ts';
import { platesOf } from '../piece/plates.ts';
import { dayWords } from '../units/days.ts';

type Text = { en: string[] };

/**
 * The plates of a piece as a IIIF manifest: one canvas a plate, in their order, with caption, description, and its marks as comments on the place.
 *
 * @param base  the address under which manifest and pictures will lie, without a slash at its end; a picture is `base/plates/NUMBER.jpg`
 * @source IIIF Presentation API 3.0 (iiif.io/api/presentation/3.0), its required properties, from memory; held against a validator
 */
export function iiifManifest(
  piece: Pick<Piece, 'title' | 'photos' | 'plateOrder' | 'engagement' | 'example'>,
  base: string,
) {
  const plates = platesOf(piece).flatMap(({ photo, plate }) =>
    plate === undefined ? [] : [{ photo, plate }],
  );
  return {
    '@context': 'http://iiif.io/api/presentation/3/context.json',
    id: `${base}/manifest.json`,
    type: 'Manifest',
    label: text(piece.title.trim() || 'A piece of furniture'),
    ...(piece.example ? { summary: text('An invented example.') } : {}),
    metadata: [
      ...(piece.engagement.examinedOn === undefined
        ? []
        : [{ label: text('Examined'), value: text(dayWords(piece.engagement.examinedOn)) }]),
      { label: text('Plates'), value: text(`${plates.length}`) },
    ],
    items: plates.map(({ photo, plate }) => {
      const canvas = `${base}/canvas/${plate}`;
      const { widthPx: width, heightPx: height } = photo;
      const marks = photo.marks.filter(({ words }) => words.trim() !== '');
      return {
        id: canvas,
        type: 'Canvas',
        label: text(`Plate ${plate}${photo.caption.trim() === '' ? '' : `. ${photo.caption.trim()}`}`),
        ...(photo.alternative.trim() === '' ? {} : { summary: text(photo.alternative.trim()) }),
        width,
        height,
        items: [
          {
            id: `${canvas}/page`,
            type: 'AnnotationPage',
            items: [
              {
                id: `${canvas}/picture`,
                type: 'Annotation',
                motivation: 'painting',
                body: {
                  id: `${base}/plates/${plate}.jpg`,
                  type: 'Image',
                  format: 'image/jpeg',
                  width,
                  height,
                },
                target: canvas,
              },
            ],
          },
        ],
        ...(marks.length === 0
          ? {}
          : {
              annotations: [
                {
                  id: `${canvas}/marks`,
                  type: 'AnnotationPage',
                  items: marks.map((mark) => ({
                    id: `${canvas}/mark/${mark.number}`,
                    type: 'Annotation',
                    motivation: 'commenting',
                    body: {
                      type: 'TextualBody',
                      value: `${mark.number}. ${mark.words.trim()}`,
                      format: 'text/plain',
                      language: 'en',
                    },
                    target: `${canvas}#xywh=${around(mark.points, width, height).join(',')}`,
                  })),
                },
              ],
            }),
      };
    }),
  };
}

function text(words: string): Text {
  return { en: [words] };
}

/** The box around a mark's points in whole pixels of the picture, never empty. */
function around(points: readonly (readonly [number, number])[], width: number, height: number): number[] {
  const xs = points.map(([x]) => x * width);
  const ys = points.map(([, y]) => y * height);
  const [left, top] = [Math.floor(Math.min(...xs)), Math.floor(Math.min(...ys))];
  const at = (value: number, most: number) => Math.max(0, Math.min(value, most - 1));
  const [x, y] = [at(left, width), at(top, height)];
  return [x, y, Math.max(1, Math.ceil(Math.max(...xs)) - x), Math.max(1, Math.ceil(Math.max(...ys)) - y)];
}
