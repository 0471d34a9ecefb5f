import type { Overwritten } from '../../piece/overwritten.ts';
import type { Piece } from '../../piece/piece.ts';
import { fieldName } from '../history/fieldName.ts';
import type { NameBook } from '../history/historyWords.ts';
import { useNameBook } from '../history/useNameBook.ts';
import { valueWords } from '../history/valueWords.ts';
import type { UsedPiece } from '../record/usePiece.ts';
import { clockWords } from './dayWords.ts';

/** What two devices wrote in one place without seeing each other's: both values, and one touch to say which holds. */
export function OverwrittenNotice({ used, piece }: { used: UsedPiece; piece: Piece }) {
  const names = useNameBook(piece);
  if (used.overwritten.length === 0 || used.readOnly) return null;
  return (
    <section className="caution stack-tight" aria-label="Changed in two places at once">
      <p>
        {used.overwritten.length === 1
          ? 'This was changed in two places, and neither had seen the other. Both are kept in the history; say which holds.'
          : `${used.overwritten.length} entries were changed in two places, and neither had seen the other. Both are kept in the history; say which holds.`}
      </p>
      <ul className="bare-list">
        {used.overwritten.map((one) => (
          <li key={`${one.act} ${one.path.join(' ')}`} className="stack-tight">
            <p>
              <strong>{capital(placeName(one.path, names))}</strong>
              <span className="soft small">
                {' '}
                written over on {one.device}
                {one.who === '' ? '' : ` by ${one.who}`}, {clockWords(one.at)}
              </span>
            </p>
            <div className="row">
              <Choice one={one} which="later" settle={used.settle} words="Keep" />
              <Choice one={one} which="earlier" settle={used.settle} words="Put back" />
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

type ChoiceProps = {
  one: Overwritten;
  which: 'earlier' | 'later';
  settle: UsedPiece['settle'];
  words: string;
};

function Choice({ one, which, settle, words }: ChoiceProps) {
  const value = valueWords(one.path, one[which]);
  return (
    <button type="button" className="button quiet" onClick={() => settle(one, which)}>
      {words} {value === undefined ? 'it empty' : `“${value}”`}
    </button>
  );
}

function placeName(path: readonly string[], names: NameBook): string {
  const [room, key = ''] = path;
  if (room === 'findings') {
    const [sign = '', part = ''] = key.split('@');
    return `“${names.sign(sign)}” on the ${names.part(part)}`;
  }
  return room === 'measures' ? names.measure(key) : fieldName(path, names);
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
