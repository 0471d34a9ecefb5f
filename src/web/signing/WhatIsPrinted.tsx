import { counted } from '../../ground/words.ts';
import { inSentence } from '../../knowledge/inSentence.ts';
import { lookedOverWords } from '../../piece/observationWords.ts';
import type { Piece } from '../../piece/piece.ts';
import { type ReadingId, readingWords } from '../../piece/readings.ts';
import { formatYears } from '../../units/years.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { pieceTitle } from '../shell/pieceTitle.ts';

/** In a few lines what the document will say and hold. */
export function WhatIsPrinted({ piece, leading }: { piece: Piece; leading: ReadingId | undefined }) {
  const { forms } = useKnowledge();
  const { opinion, engagement } = piece;
  const plates = Object.values(piece.photos).filter((photo) => photo.asPlate).length;
  const made = [opinion.years === undefined ? '' : formatYears(opinion.years), opinion.place.trim()].filter(
    (words) => words !== '',
  );
  const rows: [string, string][] = [
    ['Piece', `${pieceTitle(piece)} (${inSentence(forms[piece.form]?.name ?? piece.form)})`],
    ['For', engagement.client.trim()],
    ['Conclusion', opinion.conclusion.trim()],
    ['You conclude', opinion.reading === undefined ? '' : readingWords[opinion.reading].title],
    ['Findings lead to', leading === undefined ? '' : readingWords[leading].title],
    ['Made', made.join(', ')],
    ['You state', piece.lookedOver ? lookedOverWords : ''],
    [
      'With it',
      [
        counted(Object.keys(piece.findings).length, 'finding'),
        ...(Object.keys(piece.observations).length === 0
          ? []
          : [`${counted(Object.keys(piece.observations).length, 'observation')} of your own`]),
        counted(Object.keys(piece.measures).length, 'measure'),
        counted(plates, 'plate'),
      ].join(', '),
    ],
  ];
  return (
    <section className="stack-tight sheet" aria-labelledby="printed">
      <h2 id="printed">What will be printed</h2>
      <dl className="printed">
        {rows.map(([name, words]) =>
          words === '' ? null : (
            <div key={name} className="printed-row">
              <dt>{name}</dt>
              <dd>{words}</dd>
            </div>
          ),
        )}
      </dl>
    </section>
  );
}
