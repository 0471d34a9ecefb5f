import { Link } from '@tanstack/react-router';
import { type KeyboardEvent, useId, useState } from 'react';
import { inSentence } from '../../knowledge/inSentence.ts';
import { needOn } from '../../knowledge/needOn.ts';
import { type FindingState, type Sureness, tellsOfPiece } from '../../piece/finding.ts';
import { TextField } from '../fields/TextField.tsx';
import { TextPlace } from '../fields/TextPlace.tsx';
import { drawingsOfSign, SignDrawingFigure } from '../reference/SignDrawingFigure.tsx';
import { AnswerButtons, AnswerInWords, answers, surenesses } from './AnswerButtons.tsx';
import { answerSign, putInWords, sayHowSure, sayWhereSeen } from './answerSign.ts';
import type { ExaminationContext } from './examinationContext.ts';
import { FindingPhotos } from './photos/FindingPhotos.tsx';
import { PhotoButtons } from './photos/PhotoButtons.tsx';
import { sayMinutes, sayNeed } from './planLooks.ts';
import { SignFigures } from './SignFigures.tsx';
import type { OfferedSign } from './signsOnPart.ts';

type Props = {
  context: ExaminationContext;
  offered: OfferedSign;
  part: string | undefined;
  openAtFirst: boolean;
  /** A caution that already stands above, so that it is not said on every line. */
  saidAbove: string | undefined;
};

/** One sign: answered in one touch, its sureness in a second, a photo in a third; what to look for one touch below. */
export function SignRow({ context, offered, part, openAtFirst, saidAbove }: Props) {
  const { sign, finding } = offered;
  const id = useId();
  const [open, setOpen] = useState(openAtFirst);
  const photoOnly = context.piece.mode === 'photo-only';
  const kind = context.parts.find((each) => each.id === part)?.kind;
  const need = needOn(sign.needs, kind, context.knowledge.forms[context.piece.form]);
  const hidden = photoOnly && sign.inPhoto === 'no';
  const answer = (state: FindingState) => {
    if (!hidden) context.record(answerSign({ sign: sign.id, part }, finding, state, photoOnly));
  };
  const sure = (how: Sureness) => {
    if (finding !== undefined && tellsOfPiece(finding.state)) context.record(sayHowSure(finding, how));
  };
  const byKey = (event: KeyboardEvent<HTMLLIElement>) => {
    if (isWriting(event) || event.ctrlKey || event.metaKey || event.altKey) return;
    const state = answers.find(([, , key]) => key === event.key.toLowerCase())?.[0];
    const how = surenesses.find(([, , key]) => key === event.key)?.[0];
    if (state !== undefined) answer(state);
    else if (how !== undefined) sure(how);
    else return;
    event.preventDefault();
  };
  return (
    <li className="exam-sign" data-state={finding?.state} id={`sign-${offered.key}`} onKeyDown={byKey}>
      <button
        type="button"
        className="exam-sign-name"
        data-sign-name=""
        aria-expanded={open}
        aria-controls={`${id}-more`}
        onClick={() => setOpen(!open)}
      >
        <span className="said">{sign.name}</span>
        <span className="exam-sign-cost">
          {sayMinutes(sign.minutes)}
          {need === 'nothing' || photoOnly ? '' : ` · ${sayNeed(need)}`}
        </span>
      </button>
      {sign.caution !== undefined && sign.caution !== saidAbove && (
        <p className="caution small">{sign.caution}</p>
      )}
      {hidden && (
        <p className="small soft">A photograph can’t show this. It has to wait for the piece itself.</p>
      )}
      <div className="exam-answer-row">
        {context.readOnly ? (
          <AnswerInWords finding={finding} />
        ) : (
          <AnswerButtons name={sign.name} finding={finding} hidden={hidden} onAnswer={answer} onSure={sure} />
        )}
        {finding !== undefined && !context.readOnly && (
          <PhotoButtons uploads={context.uploads} belongs={{ part, finding: finding.id }} about={sign.name} />
        )}
      </div>
      {finding !== undefined && finding.words !== '' && !open && (
        <p className="said exam-own-words">“{finding.words}”</p>
      )}
      <FindingPhotos context={context} finding={finding} part={part} choose={open} />
      <div id={`${id}-more`} hidden={!open} className="exam-more">
        {open && <More context={context} offered={offered} />}
      </div>
    </li>
  );
}

function More({ context, offered }: { context: ExaminationContext; offered: OfferedSign }) {
  const { sign, finding } = offered;
  const taken = sign.mistakenFor.map((each) => context.knowledge.signs[each]?.name ?? each);
  return (
    <>
      <p className="said">{sign.look}</p>
      {drawingsOfSign(sign.id, context.knowledge.signDrawings).map((drawing) => (
        <SignDrawingFigure key={drawing.id} drawing={drawing} />
      ))}
      {taken.length > 0 && <p className="small">Easily taken for it: {taken.map(inSentence).join('; ')}.</p>}
      {finding === undefined ? (
        <p className="small soft">Words and photos can be put to it once it is answered.</p>
      ) : (
        <>
          <WordsOf context={context} offered={offered} />
          <label className="choice">
            <input
              type="checkbox"
              checked={finding.inPhotoOnly}
              disabled={context.readOnly}
              onChange={(event) => context.record(sayWhereSeen(finding, event.target.checked))}
            />
            Seen only in a photograph
          </label>
        </>
      )}
      <details>
        <summary>Figures and sources</summary>
        <SignFigures sign={sign} knowledge={context.knowledge} />
        <p className="small">
          <Link to="/reference" search={{ sign: sign.id }}>
            Its page in the reference
          </Link>
        </p>
      </details>
    </>
  );
}

function WordsOf({ context, offered }: { context: ExaminationContext; offered: OfferedSign }) {
  const { sign, finding } = offered;
  if (finding === undefined) return null;
  return (
    <TextPlace name={finding.id}>
      <TextField
        label="In your own words"
        note={`Printed with the finding “${sign.name}”.`}
        value={finding.words}
        readOnly={context.readOnly}
        save={(words) => context.record(putInWords(finding, words))}
      />
    </TextPlace>
  );
}

function isWriting(event: KeyboardEvent): boolean {
  const { target } = event;
  return (
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLInputElement ||
    target instanceof HTMLSelectElement
  );
}
