import { Link } from '@tanstack/react-router';
import { basisWord } from '../../knowledge/basisWord.ts';
import { inSentence } from '../../knowledge/inSentence.ts';
import { judgesInWords } from '../../knowledge/judgesInWords.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import { spanWords } from '../../knowledge/spanWords.ts';
import { whyNotDrawn } from '../../knowledge/whyNotDrawn.ts';
import { figureLines, tellsOf } from '../examination/figureWords.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { Basis, Cited } from './Cited.tsx';
import { FigureTable } from './FigureTable.tsx';
import { OwnMark } from './own/OwnMark.tsx';
import { kindWords, minutesWords, needsWords, photoWords } from './plainWords.ts';
import { drawingsOfSign, SignDrawingFigure } from './SignDrawingFigure.tsx';

/** A sign: how to look for it, what it tells of, how often it shows and who says so. */
export function SignEntry({ sign }: { sign: Knowledge['signs'][string] }) {
  const { signs, alterations, sources, shops, families, signDrawings, signsNotDrawn, making } =
    useKnowledge();
  const family = families.find((one) => one.id === sign.family);
  const takenForIt = Object.values(signs).filter((other) => other.mistakenFor.includes(sign.id));
  const alteration = alterations[sign.hangsOn.replace(/^alteration\//, '')];
  const habits = Object.values(shops).flatMap((shop) =>
    shop.habits.filter((habit) => habit.sign === sign.id).map((habit) => ({ shop, habit })),
  );
  const { span } = sign;
  const undrawn = whyNotDrawn(sign.id, { signsNotDrawn });
  return (
    <div className="stack">
      <h2>{sign.name}</h2>
      {sign.mine === true ? <OwnMark kind="sign" id={sign.id} /> : null}
      <p className="said entry-lead">{sign.look}</p>
      {sign.caution === undefined ? null : <p className="caution">{sign.caution}</p>}
      {drawingsOfSign(sign.id, signDrawings).map((drawing) => (
        <SignDrawingFigure key={drawing.id} drawing={drawing} />
      ))}
      {undrawn === undefined ? null : <p className="small soft">Not drawn: {inSentence(undrawn)}</p>}
      <dl className="facts">
        <dt>Family</dt>
        <dd>
          {family?.name ?? sign.family}{' '}
          <a
            className="no-print"
            href={`/api/field-guide.pdf?family=${sign.family}`}
            target="_blank"
            rel="noreferrer"
          >
            to print (PDF)
          </a>
        </dd>
        <dt>Tells of</dt>
        <dd>
          {alteration === undefined ? (
            tellsOf(sign.hangsOn, alterations)
          ) : (
            <>
              whether this was done:{' '}
              <Link to="/reference" search={{ alteration: alteration.id }}>
                {alteration.name}
              </Link>
            </>
          )}
        </dd>
        <dt>Seen on</dt>
        <dd>{sign.on.map(kindWords).join(', ')}</dd>
        <dt>Takes</dt>
        <dd>
          {minutesWords(sign.minutes)}, {needsWords(sign.needs)}
        </dd>
        <dt>In a photograph</dt>
        <dd>{photoWords(sign.inPhoto)}</dd>
        {sign.mistakenFor.length === 0 ? null : (
          <>
            <dt>Mistaken for</dt>
            <dd>
              {sign.mistakenFor.map((other, index) => (
                <span key={other}>
                  {index === 0 ? '' : ', '}
                  {signs[other] === undefined ? (
                    other
                  ) : (
                    <Link to="/reference" search={{ sign: other }}>
                      {signs[other].name}
                    </Link>
                  )}
                </span>
              ))}
            </dd>
          </>
        )}
        {takenForIt.length === 0 ? null : (
          <>
            <dt>Others taken for it</dt>
            <dd>
              {takenForIt.map((other, index) => (
                <span key={other.id}>
                  {index === 0 ? '' : ', '}
                  <Link to="/reference" search={{ sign: other.id }}>
                    {other.name}
                  </Link>
                </span>
              ))}
            </dd>
          </>
        )}
        {span === undefined ? null : (
          <>
            <dt>Years</dt>
            <dd>
              {spanWords(span)}
              {span.by === undefined ? '' : ` (${basisWord(span.by)})`}
            </dd>
          </>
        )}
      </dl>
      <FigureTable
        caption="Of 100 such parts, how many show it"
        head="If"
        lines={figureLines(sign, sources).map((line) => ({ ...line, name: line.state }))}
      />
      {Object.values(sign.shows).some(({ apart }) => apart !== undefined) && (
        <p className="small soft">{judgesInWords(making)}</p>
      )}
      <Basis basis={sign.basis} />
      {habits.length === 0 ? null : (
        <section className="stack-tight">
          <h3>Shops and regions with their own habit</h3>
          <ul>
            {habits.map(({ shop, habit }) => (
              <li key={`${shop.id} ${habit.on?.join(' ')}`}>
                <Link to="/reference" search={{ shop: shop.id }}>
                  {shop.name}
                </Link>
                : {habit.shows.in100} of 100
                {habit.on === undefined ? '' : `, on ${habit.on.map(kindWords).join(', ')}`}
              </li>
            ))}
          </ul>
        </section>
      )}
      <Cited
        ids={[
          ...sign.sources,
          ...Object.values(sign.shows).flatMap((figure) => figure.source ?? []),
          ...(sign.basis?.source === undefined ? [] : [sign.basis.source]),
          ...(span?.source === undefined ? [] : [span.source]),
        ]}
      />
    </div>
  );
}
