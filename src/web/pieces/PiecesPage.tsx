import { Link, useNavigate } from '@tanstack/react-router';
import { useId, useState } from 'react';
import { counted } from '../../ground/words.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { BringInPiece } from '../pieceFile/BringInPiece.tsx';
import { useDesk } from '../record/DeskProvider.tsx';
import { useReadOnly } from '../record/useReadOnly.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { copyPiece } from './copyPiece.ts';
import { answersTo, type ListedPiece, sortedIntoPlaces } from './listedPiece.ts';
import { PieceEntry } from './PieceEntry.tsx';
import { useListedPieces } from './useListedPieces.ts';
import './pieces.css';

/** The pieces: what is open, signed, archived, and the worked examples; found by words. */
export function PiecesPage() {
  usePageTitle('Pieces');
  const { forms } = useKnowledge();
  const desk = useDesk();
  const readOnly = useReadOnly() !== null;
  const navigate = useNavigate();
  const search = useId();
  const { pieces, damaged, trouble, read } = useListedPieces();
  const [words, setWords] = useState('');
  const [said, setSaid] = useState('');

  const found =
    pieces?.filter((listed) => answersTo(words, listed, forms[listed.form]?.name ?? listed.form)) ?? [];
  const places = sortedIntoPlaces(found, (listed) => listed.putAway);
  const none = pieces !== undefined && !pieces.some((listed) => !listed.example);

  const putAway = async (listed: ListedPiece, to: boolean) => {
    desk.record(listed.id, 'piece-put-away', [{ path: ['putAway'], to }]);
    await desk.settled();
    await read();
    setSaid(
      to
        ? `“${listed.title}” is in the archive, at the end of the list.`
        : `“${listed.title}” is back in the list.`,
    );
  };
  const makeMine = async (listed: ListedPiece) => {
    const copied = await copyPiece(listed.id);
    if (copied.came === 'answer') void navigate({ to: '/piece/$id/examination', params: copied.answer });
    else
      setSaid(
        copied.came === 'refusal'
          ? copied.message
          : 'Can’t reach Underside on this computer. Try again in a moment.',
      );
  };
  const list = (id: string, title: string, entries: readonly ListedPiece[]) =>
    entries.length === 0 ? null : (
      <section aria-labelledby={id}>
        <h2 id={id}>{title}</h2>
        <ul className="bare-list ledger">
          {entries.map((listed) => (
            <PieceEntry
              key={listed.id}
              listed={listed}
              away={listed.putAway}
              readOnly={readOnly}
              putAway={(to) => void putAway(listed, to)}
              makeMine={() => void makeMine(listed)}
            />
          ))}
        </ul>
      </section>
    );

  return (
    <div className="pieces">
      <div className="pieces-top">
        <h1>Pieces</h1>
        {readOnly ? null : (
          <Link to="/new" className="button">
            New piece
          </Link>
        )}
      </div>
      {pieces === undefined || pieces.length < 2 ? null : (
        <div className="field">
          <label htmlFor={search}>Find by words</label>
          <input
            id={search}
            type="search"
            value={words}
            onChange={(change) => setWords(change.target.value)}
            aria-describedby={`${search}-note`}
          />
          <span className="note" id={`${search}-note`}>
            Title, client, form, maker, place or a year.
          </span>
        </div>
      )}
      <p role="status" className={said === '' ? 'unseen' : ''}>
        {said !== ''
          ? said
          : words === ''
            ? ''
            : found.length === 1
              ? '1 piece found'
              : `${found.length} pieces found`}
      </p>
      {damaged.map(({ id, message }) => (
        <p key={id} className="caution" role="alert">
          {message}
        </p>
      ))}
      {trouble === '' ? null : (
        <p className="caution" role="alert">
          {trouble}
        </p>
      )}
      {pieces === undefined && trouble === '' ? <p role="status">Fetching the pieces…</p> : null}
      {none && words === '' ? (
        <p className="said">
          {readOnly ? (
            'There is no piece in this record.'
          ) : (
            <>
              No piece of your own yet. Take one on with <Link to="/new">New piece</Link>, or first read one
              of the worked examples to see where an examination ends.
            </>
          )}
        </p>
      ) : null}
      {words !== '' && found.length === 0 && pieces !== undefined ? (
        <p className="said">No piece answers to all of these words. Try fewer, or only a year.</p>
      ) : null}
      {list('open', 'Open', places.open)}
      {list('signed', 'Signed', places.signed)}
      {list('examples', 'Worked examples, invented', places.examples)}
      {places.away.length === 0 ? null : (
        <details>
          <summary>Archive: {counted(places.away.length, 'piece')}</summary>
          {list('away', 'Archive', places.away)}
        </details>
      )}
      {readOnly ? null : <BringInPiece onCame={() => void read()} />}
    </div>
  );
}
