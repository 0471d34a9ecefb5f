import { Link } from '@tanstack/react-router';
import { dayWords } from '../../units/days.ts';
import { formatYears } from '../../units/years.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { pieceTitle } from '../shell/pieceTitle.ts';
import type { ListedPiece } from './listedPiece.ts';

type PieceEntryProps = {
  listed: ListedPiece;
  away: boolean;
  /** The record is only looked at. */
  readOnly: boolean;
  putAway: (to: boolean) => void;
  makeMine: () => void;
};

/** One piece in the list: what it is, for whom, how far it has come. */
export function PieceEntry({ listed, away, readOnly, putAway, makeMine }: PieceEntryProps) {
  const form = useKnowledge().forms[listed.form]?.name ?? listed.form;
  const said = [
    form,
    listed.period ? `said to be of ${formatYears(listed.period)}` : '',
    listed.maker ?? '',
    listed.mode === 'photo-only' ? 'in photographs only' : '',
  ];
  const done = [
    listed.client ? `for ${listed.client}` : '',
    counted(listed.findings, 'finding') || 'nothing found yet',
    counted(listed.photos, 'photo'),
    listed.example || !listed.updatedAt ? '' : `last touched ${dayWords(listed.updatedAt)}`,
  ];
  const title = pieceTitle(listed);
  return (
    <li>
      <div className="ledger-words">
        <Link to="/piece/$id/examination" params={{ id: listed.id }} className="ledger-title">
          {title}
        </Link>
        <span>{joined(said)}</span>
        <span className="soft small">{joined(done)}</span>
      </div>
      <div className="ledger-acts">
        {listed.example ? (
          <>
            <span className="mark">invented</span>
            {readOnly ? null : (
              <button
                type="button"
                className="button quiet"
                onClick={makeMine}
                aria-label={`Make a copy to edit: ${title}`}
              >
                Make a copy to edit
              </button>
            )}
          </>
        ) : (
          <span className={listed.status === 'signed' ? 'mark signed' : 'mark'}>{listed.status}</span>
        )}
        {readOnly ? null : (
          <button
            type="button"
            className="button plain"
            onClick={() => putAway(!away)}
            aria-label={`${away ? 'Bring back' : 'Archive'}: ${title}`}
          >
            {away ? 'Bring back' : 'Archive'}
          </button>
        )}
      </div>
    </li>
  );
}

function joined(words: readonly string[]): string {
  return words.filter((word) => word !== '').join(', ');
}

function counted(count: number, thing: string): string {
  return count === 0 ? '' : count === 1 ? `1 ${thing}` : `${count} ${thing}s`;
}
