import { useMemo, useState } from 'react';
import { caseFromPiece } from '../../../evidence/caseFromPiece.ts';
import { prepareCase } from '../../../evidence/prepareCase.ts';
import { inSentence } from '../../../knowledge/inSentence.ts';
import { isTelling } from '../../../weighing/lookPlan.ts';
import { type PhotographsToAsk, photographsToAsk } from '../../../weighing/photographsToAsk.ts';
import type { WeighingNow } from '../../weigh/useWeighing.ts';
import type { ExaminationContext } from '../examinationContext.ts';

import { letterOfAsks } from './letterOfAsks.ts';
import './asks.css';

type Ask = PhotographsToAsk['asks'][number];

/** What to ask the owner for when the piece is known from photographs only, as a letter ready to send. */
export function AsksTab({ context, weigh }: { context: ExaminationContext; weigh: WeighingNow }) {
  const { piece, knowledge } = context;
  const [chosen, setChosen] = useState<Readonly<Record<string, boolean>>>({});
  const ready = useMemo(
    () => prepareCase(caseFromPiece(piece), knowledge, new Date().getFullYear()),
    [piece, knowledge],
  );
  if (!ready.ok) return <p className="caution">{ready.faults[0]?.message}</p>;
  const told = photographsToAsk(ready.prepared, weigh.nextLooks);
  // A picture that would tell little is left out unless it is ticked.
  const isAsked = (ask: Ask) =>
    chosen[ask.id] ?? (ask.kind === 'answer' || weigh.nextLooks.length === 0 || ask.shows.some(isTelling));
  const form = inSentence(knowledge.forms[piece.form]?.name ?? 'piece');
  const letter = letterOfAsks(`the ${form}`, told.asks.filter(isAsked));
  return (
    <div className="asks">
      <section className="stack-tight">
        <h2>What to ask for</h2>
        <p>
          The piece is known from photographs only. Tick what the letter shall ask for; what each picture may
          show stands beneath it.
        </p>
        {weigh.nextLooks.length === 0 && (
          <p role="status" className="soft">
            What each picture would tell is being worked out.
          </p>
        )}
        <ul className="asks-list">
          {told.asks.map((ask) => (
            <li key={ask.id}>
              <label className="choice">
                <input
                  type="checkbox"
                  checked={isAsked(ask)}
                  onChange={(event) => setChosen({ ...chosen, [ask.id]: event.target.checked })}
                />
                <strong>{ask.name}</strong>
              </label>
              <MayShow context={context} ask={ask} />
            </li>
          ))}
        </ul>
      </section>
      <section className="stack-tight">
        <h2>The letter</h2>
        <Letter text={letter} />
        <OnlyInHand context={context} told={told} />
      </section>
    </div>
  );
}

function MayShow({ context, ask }: { context: ExaminationContext; ask: Ask }) {
  const telling = ask.shows.filter(isTelling);
  const names = [...new Set(telling.map(({ sign }) => nameOf(context, sign)))];
  if (ask.kind === 'answer') return <p className="small soft">{ask.ask}</p>;
  if (names.length === 0) return <p className="small soft">Little more would be told by it now.</p>;
  return (
    <p className="small soft">
      May show: {names.slice(0, 4).join('; ')}
      {names.length > 4 ? `; and ${names.length - 4} more` : ''}.
    </p>
  );
}

function Letter({ text }: { text: string }) {
  const [said, setSaid] = useState('');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      setSaid('Copied.');
    } catch {
      setSaid('This browser does not let the program copy: mark the text and copy it by hand.');
    }
  };
  return (
    <>
      <textarea className="asks-letter" aria-label="The letter" readOnly rows={18} value={text} />
      <p className="row">
        <button type="button" className="button" onClick={copy}>
          Copy the letter
        </button>
        <span role="status">{said}</span>
      </p>
    </>
  );
}

function OnlyInHand({ context, told }: { context: ExaminationContext; told: PhotographsToAsk }) {
  if (told.onlyInHand.length === 0) return null;
  return (
    <details>
      <summary>What no photograph can show ({told.onlyInHand.length} signs)</summary>
      <p className="small soft">
        {told.onlyInHand.map(({ sign }) => nameOf(context, sign)).join('; ')}. They wait for the piece itself.
      </p>
    </details>
  );
}

function nameOf(context: ExaminationContext, sign: string): string {
  return context.knowledge.signs[sign]?.name ?? sign;
}
