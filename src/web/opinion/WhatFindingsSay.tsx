import { Link } from '@tanstack/react-router';
import { hasEvidence } from '../../piece/hasEvidence.ts';
import { readingWords } from '../../piece/readings.ts';
import { formatYears } from '../../units/years.ts';
import { conditionsInWords, makingInWords, partsInWords } from '../../weighing/makingInWords.ts';
import { oddsInWords } from '../../weighing/oddsInWords.ts';
import { probabilityBand, probableWords, toldShares } from '../../weighing/probabilityWords.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import type { OpinionContext } from './opinionContext.ts';

/** The program's reading, to stand beside the conclusion: never in its place. */
export function WhatFindingsSay({ context }: { context: OpinionContext }) {
  const { piece, weighing } = context;
  const knowledge = useKnowledge();
  const leading = weighing?.readings.find((reading) => reading.id === weighing.leading);
  return (
    <section className="stack-tight sheet" aria-labelledby="findings-say">
      <h2 id="findings-say">What the findings say</h2>
      {!hasEvidence(piece) ? (
        <p>
          Nothing has been found yet.{' '}
          <Link to="/piece/$id/examination" params={{ id: piece.id }}>
            Examine the piece
          </Link>{' '}
          first.
        </p>
      ) : weighing === undefined || leading === undefined ? (
        <p role="status">Weighing…</p>
      ) : (
        <>
          <p className="said">
            From {oddsInWords(piece, knowledge)} and these findings: {makingInWords(weighing)}.
          </p>
          <p>
            Its condition, if it is of the period: {conditionsInWords(weighing)}. {partsInWords(weighing)}
          </p>
          <p className="soft">
            Both together: {probabilityBand(leading.probability).words}, {readingWords[leading.id].inSentence}
            .
          </p>
          <p className="soft">
            Years, {probableWords(toldShares.most)}:{' '}
            {formatYears([Math.round(weighing.years.p90[0]), Math.round(weighing.years.p90[1])])}.
          </p>
          {weighing.unexplained.unexplained ? <p>{weighing.unexplained.reason}</p> : null}
          <p>
            <Link to="/piece/$id/readings" params={{ id: piece.id }}>
              All the readings, and what speaks for them
            </Link>
          </p>
        </>
      )}
    </section>
  );
}
