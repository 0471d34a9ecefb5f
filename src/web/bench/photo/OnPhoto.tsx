import { type ReactNode, useId } from 'react';
import { platesOf } from '../../../piece/plates.ts';
import type { BenchContext } from '../benchContext.ts';
import { type LaidPicture, useOpenPicture } from './useOpenPicture.ts';
import './onPhoto.css';

type Props = {
  context: BenchContext;
  /** What to do, while no picture lies here. */
  says: string;
  children: (laid: LaidPicture) => ReactNode;
};

/** Lays one photo of the piece, or a file that is not added to it, on the board of a tool. */
export function OnPhoto({ context, says, children }: Props) {
  const id = useId();
  const { opening, openPhoto, openFile, putAway } = useOpenPicture();
  const photos = platesOf(context.piece);
  if (opening.state === 'open')
    return (
      <div className="stack">
        <div className="row">
          <strong>{opening.laid.title}</strong>
          {opening.laid.photo !== undefined && <span className="small">{opening.laid.shows}</span>}
          <span className="soft small">
            {opening.laid.open.widthPx} × {opening.laid.open.heightPx} pixels
          </span>
          <button type="button" className="button quiet" onClick={putAway}>
            Another photo
          </button>
        </div>
        {opening.laid.note !== undefined && <p className="small soft">{opening.laid.note}</p>}
        {children(opening.laid)}
      </div>
    );
  if (opening.state === 'opening')
    return (
      <div className="row" role="status">
        <span>
          {opening.share === undefined ? `Reading “${opening.title}”` : `Fetching “${opening.title}”`}
        </span>
        <progress
          aria-label={`Opening ${opening.title}`}
          {...(opening.share === undefined ? {} : { value: opening.share })}
        />
        <button type="button" className="button quiet" onClick={putAway}>
          Cancel
        </button>
      </div>
    );
  return (
    <div className="stack">
      <p className="said">{says}</p>
      {opening.state === 'failed' && (
        <p className="caution" role="alert">
          {opening.why}
        </p>
      )}
      {photos.length > 0 ? (
        <ul className="bare-list photo-choices" aria-label="Photos of the piece">
          {photos.map(({ photo, called }) => (
            <li key={photo.id}>
              <button type="button" className="photo-choice" onClick={() => void openPhoto(photo, called)}>
                <img src={`/api/photos/${photo.sha256}/thumb`} alt="" loading="lazy" />
                <span className="small">{`${called}: ${photo.caption || photo.name}`}</span>
              </button>
            </li>
          ))}
        </ul>
      ) : (
        <p className="soft">This piece has no photos yet: add some under Examination, or open a file.</p>
      )}
      <div className="field">
        <label htmlFor={`${id}-file`}>Or open a file, without adding it to the piece</label>
        <input
          id={`${id}-file`}
          type="file"
          className="photo-file"
          accept="image/*"
          onChange={(change) => {
            const [file] = change.target.files ?? [];
            if (file !== undefined) void openFile(file);
          }}
        />
      </div>
    </div>
  );
}
