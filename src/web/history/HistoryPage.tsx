import { useEffect, useId, useMemo, useState } from 'react';
import { counted } from '../../ground/words.ts';
import type { Piece } from '../../piece/piece.ts';
import { dayWords } from '../../units/days.ts';
import { OpenRecords } from '../pieceFile/OpenRecords.tsx';
import { TakeOutPiece } from '../pieceFile/TakeOutPiece.tsx';
import type { UsedPiece } from '../record/usePiece.ts';
import { usePiece } from '../record/usePiece.ts';
import { clockWords } from '../shell/dayWords.ts';
import { pieceTitle } from '../shell/pieceTitle.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { usePieceId } from '../shell/usePieceId.ts';
import { type HistoryEntry, historyEntries } from './historyWords.ts';
import { useHistory } from './useHistory.ts';
import { useNameBook } from './useNameBook.ts';
import './history.css';

/** Everything that was done to a piece: by whom, where, when, and what stood there before. */
export function HistoryPage() {
  const used = usePiece(usePieceId());
  usePageTitle('History', used.piece === undefined ? '' : pieceTitle(used.piece));
  return used.piece === undefined ? null : <History used={used} piece={used.piece} />;
}

function History({ used, piece }: { used: UsedPiece; piece: Piece }) {
  const search = useId();
  const [words, setWords] = useState('');
  const { events, total, trouble, older } = useHistory(piece.id, used.seq);
  const names = useNameBook(piece);
  const entries = useMemo(() => historyEntries(events, names).toReversed(), [events, names]);
  const found = entries.filter((entry) => answers(entry, words));
  // Words are looked for in every act, so that all of them have to be here.
  const searching = words.trim() !== '' && older !== undefined && trouble === '';
  useEffect(() => {
    if (searching) void older(2000);
  }, [searching, older]);
  const [most, setMost] = useState(200);
  const showOlder = () => {
    setMost(most + 500);
    if (found.length < most + 500) void older?.(500);
  };
  const hidden = words.trim() === '' ? total - Math.min(found.length, most) : found.length - most;
  return (
    <div className="history stack">
      <h1>History</h1>
      <p className="soft">
        Nothing here is ever changed or removed: what is taken back stays, and says so. Each act is chained to
        the one before it on its device; <code>npx underside verify</code> in a terminal checks every chain
        and every photo.
      </p>
      <div className="field">
        <label htmlFor={search}>Find in the history</label>
        <input id={search} type="search" value={words} onChange={(change) => setWords(change.target.value)} />
      </div>
      <p role="status" className="soft small">
        {countWords(found.length, total, words)}
        {searching ? ` Searched ${entries.length} so far.` : ''}
        {used.waiting === 0
          ? ''
          : ` ${used.waiting} more wait on this device and will stand here once Underside can be reached.`}
      </p>
      {trouble === '' ? null : (
        <p className="caution" role="alert">
          {trouble}
        </p>
      )}
      {byDay(found.slice(0, most)).map(([day, acts]) => (
        <section key={day} aria-labelledby={`day-${day}`}>
          <h2 id={`day-${day}`}>{dayWords(day)}</h2>
          <ol className="bare-list">
            {acts.map((entry) => (
              <Act key={entry.id} entry={entry} />
            ))}
          </ol>
        </section>
      ))}
      {hidden <= 0 ? null : (
        <div className="row">
          <button type="button" className="button quiet" onClick={showOlder}>
            Show older acts
          </button>
          <span className="soft small">{hidden} more</span>
        </div>
      )}
      {piece.example ? null : <TakeOutPiece id={piece.id} />}
      <OpenRecords id={piece.id} />
    </div>
  );
}

function Act({ entry }: { entry: HistoryEntry }) {
  return (
    <li className={entry.takenBack ? 'act taken-back' : 'act'}>
      <span className="act-when soft small">
        <time dateTime={entry.at}>{clockWords(entry.at)}</time>
      </span>
      <div className="stack-tight">
        <p>
          <span className="act-words">{entry.sentence}</span>
          {entry.takenBack ? <span className="mark">taken back later</span> : null}
        </p>
        {entry.after === undefined ? null : <p className="said">{entry.after}</p>}
        {entry.before === undefined ? null : (
          <p className="soft small">
            Before: <span className="said">{entry.before}</span>
          </p>
        )}
        <p className="soft small">
          {entry.who === '' ? 'No name given' : entry.who}, on {entry.device}
        </p>
      </div>
    </li>
  );
}

function countWords(found: number, all: number, words: string): string {
  const acts = (count: number) => counted(count, 'act');
  return words.trim() === '' ? `${acts(all)}, the latest first.` : `${found} of ${acts(all)}.`;
}

function answers(entry: HistoryEntry, words: string): boolean {
  const text = [entry.sentence, entry.before, entry.after, entry.who, entry.device].join(' ').toLowerCase();
  return words
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}

function byDay(entries: readonly HistoryEntry[]): [string, HistoryEntry[]][] {
  const days = new Map<string, HistoryEntry[]>();
  for (const entry of entries) {
    const day = entry.at.slice(0, 10);
    days.set(day, [...(days.get(day) ?? []), entry]);
  }
  return [...days];
}
