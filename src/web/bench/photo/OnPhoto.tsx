import { type ReactNode, useId } from 'react';
import type { Photo } from '../../../piece/photo.ts';
import type { Piece } from '../../../piece/piece.ts';
import type { BenchRoom } from '../benchRoom.ts';
import { type LaidPicture, useOpenPicture } from './useOpenPicture.ts';
import './onPhoto.css';

type Props = {
  room: BenchRoom;
  /** What to do, while no picture lies here. */
  says: string;
  children: (laid: LaidPicture) => ReactNode;
};

/** Lays one photo of the piece, or a file that is not added to it, on the board of a tool. */
export function OnPhoto({ room, says, children }: Props) {
  const id = useId();
  const { opening, openPhoto, openFile, putAway } = useOpenPicture();
  const photos = photosInOrder(room.piece);
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
          {photos.map((photo, index) => (
            <li key={photo.id}>
              <button
                type="button"
                className="photo-choice"
                onClick={() => void openPhoto(photo, `Photo ${index + 1}`)}
              >
                <img src={`/api/photos/${photo.sha256}/thumb`} alt="" loading="lazy" />
                <span className="small">{titleOf(photo, index)}</span>
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

function photosInOrder(piece: Piece): Photo[] {
  const ordered = piece.plateOrder.flatMap((id) => piece.photos[id] ?? []);
  return [...ordered, ...Object.values(piece.photos).filter(({ id }) => !piece.plateOrder.includes(id))];
}

function titleOf(photo: Photo, index: number): string {
  return `Photo ${index + 1}${photo.caption || photo.name ? `: ${photo.caption || photo.name}` : ''}`;
}
