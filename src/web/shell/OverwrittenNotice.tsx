import { capital } from '../../ground/words.ts';
import type { Overwritten } from '../../piece/overwritten.ts';
import type { Piece } from '../../piece/piece.ts';
import { fieldName } from '../history/fieldName.ts';
import type { NameBook } from '../history/nameBook.ts';
import { useNameBook } from '../history/useNameBook.ts';
import { valueWords } from '../history/valueWords.ts';
import type { UsedPiece } from '../record/usePiece.ts';
import { clockWords } from './dayWords.ts';

/** What two devices wrote in one place without seeing each other's: both values, and one touch to say which holds. */
export function OverwrittenNotice({ used, piece }: { used: UsedPiece; piece: Piece }) {
  const names = useNameBook(piece);
  if (used.overwritten.length === 0) return null;
  const mayChoose = used.readOnly ? undefined : used.settle;
  return (
    <section className="caution stack-tight overwritten-notice" aria-label="Changed in two places at once">
      <p>
        {used.overwritten.length === 1
          ? 'This was changed on two devices, and neither had seen the other’s. '
          : `${used.overwritten.length} entries were changed on two devices, and neither had seen the other’s. `}
        Both are kept in the history{mayChoose === undefined ? '.' : '; say which holds.'}
      </p>
      <ul className="bare-list overwritten">
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
            <Value one={one} which="later" settle={mayChoose} />
            <Value one={one} which="earlier" settle={mayChoose} />
          </li>
        ))}
      </ul>
    </section>
  );
}

type ValueProps = {
  one: Overwritten;
  which: 'earlier' | 'later';
  /** Left out where nothing can be chosen. */
  settle: UsedPiece['settle'] | undefined;
};

/** One of the two values, as it reads, and the touch that lets it hold. */
function Value({ one, which, settle }: ValueProps) {
  const [says, does] = which === 'later' ? ['Now', 'Keep it'] : ['Before', 'Put it back'];
  const value = valueWords(one.path, one[which]) ?? 'nothing';
  return (
    <div className="overwritten-value">
      <span className="soft small">{says}</span>
      <p className="overwritten-words">{value}</p>
      {settle === undefined ? null : (
        <button
          type="button"
          className="button quiet"
          aria-label={`${does}: ${value}`}
          onClick={() => settle(one, which)}
        >
          {does}
        </button>
      )}
    </div>
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
