import { Link } from '@tanstack/react-router';
import { readingWords } from '../../piece/readings.ts';
import { contradictionBelowWords } from '../../weighing/contradictionBelow.ts';
import { outOf } from '../../weighing/probabilityWords.ts';
import { turnedByShop } from '../../weighing/turnedByShop.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import { placeToHash } from '../examination/placeInHash.ts';
import type { ReadingsContext } from './readingsContext.ts';

type Contradiction = Weighing['contradictions'][number];

/** What doesn’t fit: a question to pursue, never a badge; and what once did not fit and is explained. */
export function Contradictions({ context }: { context: ReadingsContext }) {
  const open = context.weighing.contradictions.filter((each) => !each.explained);
  const explained = context.weighing.contradictions.filter((each) => each.explained);
  return (
    <section className="stack-tight">
      <h2>What doesn’t fit</h2>
      {open.length === 0 && (
        <p>
          Nothing found is {contradictionBelowWords()} for {readingWords[context.weighing.leading].inSentence}
          {explained.length > 0 ? ' once the following is taken in.' : '.'}
        </p>
      )}
      {explained.some(({ explanations }) => explanations[0]?.kind === 'shop') && (
        <p className="small soft">
          “A later piece” takes in copies and pieces made to pass as older, in the mix that was to be
          expected; how much a finding weighs against it hangs on that mix. A piece put together from old
          parts stands on neither side.
        </p>
      )}
      <ul className="read-cards">
        {[...open, ...explained].map((each) => (
          <Card key={`${each.sign}@${each.part}`} context={context} contradiction={each} />
        ))}
      </ul>
    </section>
  );
}

function Card({ context, contradiction }: { context: ReadingsContext; contradiction: Contradiction }) {
  const { sign, part, explained, explanations, question } = contradiction;
  const [first, ...rest] = explanations;
  return (
    <li className="read-card" data-explained={explained ? '' : undefined}>
      {explained && <p className="read-card-label">Explained</p>}
      <p className="said read-question">{question}</p>
      {explained && first !== undefined && (
        <p>
          <strong>{first.words}</strong> {turnedWords(context, contradiction)}
        </p>
      )}
      {!explained && explanations.length === 0 && (
        <p>Nothing in the knowledge files explains it. Look again, and ask who might know.</p>
      )}
      {(explained ? rest : explanations).length > 0 && (
        <>
          <p className="small soft">{explained ? 'It could also be:' : 'What could explain it:'}</p>
          <ul className="read-explanations">
            {(explained ? rest : explanations).map((each) => (
              <li key={`${each.kind}-${each.id}`}>
                {each.words} <span className="soft small">Then {outOf(each.share)} would show this.</span>
              </li>
            ))}
          </ul>
        </>
      )}
      <p className="row small">
        <Link
          to="/piece/$id/examination"
          params={{ id: context.piece.id }}
          hash={placeToHash({ part: part ?? 'whole', sign })}
          className="read-way"
        >
          Look at it again
        </Link>
        <Link to="/piece/$id/opinion" params={{ id: context.piece.id }} className="read-way">
          Say how it was resolved
        </Link>
      </p>
    </li>
  );
}

/** What an explained finding does now, in words and decibans. */
function turnedWords(context: ReadingsContext, { sign, part, explanations }: Contradiction): string {
  const weight = context.weighing.weights.find((each) => each.sign === sign && each.part === part);
  const first = explanations[0];
  if (weight === undefined || first === undefined) return '';
  const then = `Then ${outOf(first.share)} would show it. `;
  if (first.kind !== 'shop') return `${then}It no longer stands against the rest of the piece.`;
  return `${then}${turnedByShop(weight) ?? ''}`;
}
