import { Link } from '@tanstack/react-router';
import type { Change, Json } from '../../piece/event.ts';
import type { Piece } from '../../piece/piece.ts';
import { makingKinds, makingWords, readingWords } from '../../piece/readings.ts';
import { conditionIds, type Settlement, settledByIds, settledByWords } from '../../piece/settlement.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DayField } from '../fields/DayField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useNameBook } from '../history/useNameBook.ts';
import type { UsedPiece } from '../record/usePiece.ts';
import { today } from '../shell/dayWords.ts';

type TurnedOutProps = { used: UsedPiece; piece: Piece };
type SetSettled = (field: keyof Settlement, to: Json | undefined, more?: Change[]) => void;

/** What the piece turned out to be, where that has come to light on other grounds than the examiner’s own reading. */
export function TurnedOut({ used, piece }: TurnedOutProps) {
  const { settled } = piece;
  const { readOnly } = used;
  const set: SetSettled = (field, to, more = []) =>
    used.record('case-settled', [{ path: ['settled', field], ...(to === undefined ? {} : { to }) }, ...more]);
  const settle = (by: Settlement['by']) =>
    settled === undefined
      ? used.record('case-settled', [{ path: ['settled'], to: { by, on: today(), rests: [], words: '' } }])
      : set('by', by);
  return (
    <section className="stack" aria-labelledby="turned-out">
      <h2 id="turned-out">How the case was settled</h2>
      <p className="said">
        Where it has come out since what the piece is, and not by your own reading of it. By itself this moves
        no reading and changes no signed opinion; with others it can{' '}
        <Link to="/reference/own" search={{}}>
          teach the figures of the signs
        </Link>
        .
      </p>
      <ChoiceField
        label="What settled it"
        choices={settledByIds.map((id) => ({
          id,
          name: settledByWords[id].title,
          ...(id === 'second-expert'
            ? { note: 'Who judged for themselves. Counts half as much: they may err as you may.' }
            : {}),
        }))}
        value={settled?.by}
        save={settle}
        readOnly={readOnly}
      />
      {settled === undefined ? (
        <p className="soft small">Not settled. Choose what settled it to say what it turned out to be.</p>
      ) : (
        <>
          <Verdict settled={settled} set={set} readOnly={readOnly} />
          <RestsOn piece={piece} settled={settled} set={set} readOnly={readOnly} />
          <div className="pair">
            <DayField
              label="Settled on"
              note="Cases are reckoned in the order they were settled."
              value={settled.on}
              save={(day) => day === undefined || set('on', day)}
              readOnly={readOnly}
            />
          </div>
          <TextField
            label="On what grounds"
            note="The paper, the report, the expert; where it can be seen."
            value={settled.words}
            save={(words) => set('words', words)}
            readOnly={readOnly}
            lines
          />
          {readOnly ? null : (
            <p>
              <button
                type="button"
                className="button quiet"
                onClick={() => used.record('settlement-withdrawn', [{ path: ['settled'] }])}
              >
                Take back that it is settled
              </button>
            </p>
          )}
        </>
      )}
    </section>
  );
}

type SettledProps = { settled: Settlement; set: SetSettled; readOnly: boolean };

const open = { id: 'open', name: 'Left open' } as const;

function Verdict({ settled, set, readOnly }: SettledProps) {
  const isOfPeriod = settled.making === 'of-the-period';
  return (
    <>
      <ChoiceField
        label="What it turned out to be"
        choices={[...makingKinds.map((id) => ({ id, name: makingWords[id].title })), open]}
        value={settled.making ?? 'open'}
        save={(making) =>
          set(
            'making',
            making === 'open' ? undefined : making,
            making === 'of-the-period' || settled.condition === undefined
              ? []
              : [{ path: ['settled', 'condition'] }],
          )
        }
        readOnly={readOnly}
      />
      {isOfPeriod ? (
        <ChoiceField
          label="Its condition"
          choices={[...conditionIds.map((id) => ({ id, name: readingWords[id].title })), open]}
          value={settled.condition ?? 'open'}
          save={(condition) => set('condition', condition === 'open' ? undefined : condition)}
          readOnly={readOnly}
        />
      ) : null}
    </>
  );
}

/** The findings that the verdict itself rests on: ticked, they count nothing. */
function RestsOn({ piece, settled, set, readOnly }: SettledProps & { piece: Piece }) {
  const names = useNameBook(piece);
  const found = Object.values(piece.findings).filter(
    ({ state }) => state === 'present' || state === 'absent',
  );
  if (found.length === 0) return null;
  const rests = new Set(settled.rests);
  const tick = (key: string, is: boolean) =>
    set('rests', is ? [...settled.rests, key] : settled.rests.filter((each) => each !== key));
  return (
    <details>
      <summary>
        Findings the verdict itself rests on: {rests.size === 0 ? 'none' : rests.size} of {found.length}
      </summary>
      <fieldset className="choice-field">
        <legend className="small">
          Tick what settled it: a finding can’t bear itself out, so what is ticked counts nothing.
        </legend>
        <div className="choices">
          {found.map(({ id, sign, part, state }) => (
            <label key={id} className="choice">
              <input
                type="checkbox"
                checked={rests.has(id)}
                disabled={readOnly}
                onChange={(event) => tick(id, event.target.checked)}
              />
              <span>
                {names.sign(sign)}
                {part === undefined ? '' : `, ${names.part(part)}`}:{' '}
                {state === 'present' ? 'found' : 'not found'}
              </span>
            </label>
          ))}
        </div>
      </fieldset>
    </details>
  );
}
