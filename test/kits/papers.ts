import sharp from 'sharp';
import type { PaperForm, PaperKind } from '../../src/engagement/papers.ts';
import type { OpinionDocument } from '../../src/opinion/opinionDocument.ts';
import { opinionOf, setOpinion, weighed } from '../../src/opinion/setOpinion.ts';
import { damage } from '../../src/piece/condition.ts';
import { type Piece, piece } from '../../src/piece/piece.ts';
import { houseKnowledge } from './houseKnowledge.ts';
import { examplePiece, photoOf } from './opinions.ts';

/** The papers of one piece, weighed once. */
export type Papers = {
  piece: Piece;
  documentOf(paper: PaperKind, of?: Piece): OpinionDocument;
  bytesOf(paper: PaperKind, as: PaperForm): Promise<Uint8Array>;
};

/** The worked example of the side chair with two photos, marks and three damages, and its papers as on one fixed day. */
export async function examplePapers(): Promise<Papers> {
  const knowledge = await houseKnowledge();
  const of = await damagedChair();
  const base = { knowledge, yearNow: 2026, madeOn: '2026-11-25', version: '0.0.0-test', draws: 10 };
  const weighing = weighed({ ...base, piece: of }, () => {});
  if (weighing === undefined) throw new Error('the example was not weighed');
  const plates = await Promise.all(
    Object.values(of.photos).map(async ({ id, widthPx, heightPx }) => ({
      id,
      mediaType: 'image/jpeg',
      bytes: new Uint8Array(
        await sharp({ create: { width: widthPx, height: heightPx, channels: 3, background: '#8a6f52' } })
          .jpeg()
          .toBuffer(),
      ),
    })),
  );
  return {
    piece: of,
    documentOf: (paper, other = of) => opinionOf({ ...base, piece: other, weighing, paper }),
    bytesOf: (paper, as) => setOpinion({ ...base, piece: of, weighing, plates, paper, as }),
  };
}

async function damagedChair(): Promise<Piece> {
  const chair = await examplePiece('side-chair');
  const [first] = Object.values(chair.findings);
  const photos = {
    whole: photoOf('whole', {
      widthPx: 300,
      heightPx: 400,
      caption: 'The chair in Mrs. Oldacre’s dining room at Quillmere.',
      marks: [{ id: 'm', number: 1, kind: 'point', points: [[0.4, 0.5]], words: '', finding: first?.id }],
    }),
    under: photoOf('under', {
      sha256: 'b'.repeat(64),
      caption: 'The seat from below.',
      marks: [
        {
          id: 'n',
          number: 1,
          kind: 'outline',
          points: [
            [0.2, 0.2],
            [0.5, 0.2],
            [0.5, 0.6],
          ],
          words: 'A split along the grain.',
        },
      ],
    }),
  };
  const damages = [
    damage.parse({
      id: 'split',
      part: 'crest-rail',
      term: 'split',
      degree: 'moderate',
      where: 'right ear, from behind',
      origin: 'old-repair',
      photos: ['under'],
    }),
    damage.parse({
      id: 'glue',
      part: 'front-rail',
      term: 'failed glue line',
      degree: 'marked',
      where: 'left joint',
      goesOn: 'yes',
    }),
    damage.parse({ id: 'bloom', part: 'crest-rail', term: 'bloom', kind: 'surface', degree: 'slight' }),
  ];
  return piece.parse({
    ...chair,
    photos,
    plateOrder: ['whole', 'under'],
    damages: Object.fromEntries(damages.map((each) => [each.id, each])),
    condition: {
      completeness: 'complete',
      state: 'fair',
      words: 'Sound for its age, with one loose joint.',
      stability: 'Not to be sat on.',
    },
  });
}
