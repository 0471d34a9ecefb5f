import { askedOf, unanswered } from '../../engagement/askedByUse.ts';
import { daysOfUse } from '../../engagement/daysOfUse.ts';
import { counted } from '../../ground/words.ts';
import type { Piece } from '../../piece/piece.ts';
import { DayField } from '../fields/DayField.tsx';
import { TextField } from '../fields/TextField.tsx';

type AskedByUseProps = {
  piece: Piece;
  answer: (id: string, words: string | undefined) => void;
  readOnly: boolean;
};

/** What the intended use asks to be stated; nothing where it asks for nothing. */
export function AskedByUse({ piece, answer, readOnly }: AskedByUseProps) {
  const asked = askedOf(piece);
  if (asked.length === 0) return null;
  const { answers } = piece.engagement;
  const blank = unanswered(piece).length;
  return (
    <section className="stack" aria-labelledby="asked-by-use">
      <h2 id="asked-by-use">Asked for by this use</h2>
      <p role="status">
        {blank === 0
          ? 'Each is answered.'
          : `${counted(blank, 'answer')} of ${asked.length} still blank. “None” or “not known” is an answer; a blank is not.`}
      </p>
      {daysOfUse(piece.engagement).map((words) => (
        <p key={words} className="caution">
          {words}
        </p>
      ))}
      {asked.map(({ id, asks, note, day, check }) => (
        <div key={`${piece.engagement.purpose} ${id}`} className="asked stack-tight">
          {day === true ? (
            <DayField
              label={asks}
              {...(note === undefined ? {} : { note })}
              value={answers[id]}
              save={(to) => answer(id, to)}
              readOnly={readOnly}
            />
          ) : (
            <TextField
              label={asks}
              {...(note === undefined ? {} : { note })}
              value={answers[id] ?? ''}
              save={(words) => answer(id, words)}
              readOnly={readOnly}
              lines
            />
          )}
          <div className="row">
            {readOnly || !takesNone(note) || (answers[id] ?? '').trim() !== '' ? null : (
              <button
                type="button"
                className="button quiet"
                aria-label={`None: ${asks}`}
                onClick={() => answer(id, 'None.')}
              >
                None
              </button>
            )}
            <span className="small soft">Check against {check}.</span>
          </div>
        </div>
      ))}
    </section>
  );
}

/** Whether “none” is the usual answer, so that one touch gives it. */
function takesNone(note = ''): boolean {
  return /\bnone\b|\bnobody\b/i.test(note);
}
