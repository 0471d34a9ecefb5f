import type { Owner } from '../../piece/owner.ts';
import type { Piece } from '../../piece/piece.ts';

type Props = { piece: Piece; owner: Owner; set: (photos: string[]) => void; readOnly: boolean };

/** The photos of papers and marks that belong to a holding. */
export function Documents({ piece, owner, set, readOnly }: Props) {
  const photos = Object.values(piece.photos);
  if (photos.length === 0)
    return (
      <p className="small soft">
        Papers and labels can be photographed on the Examination page and named here.
      </p>
    );
  const chosen = new Set(owner.photos);
  return (
    <details>
      <summary>Photos of papers and marks: {chosen.size === 0 ? 'none' : chosen.size}</summary>
      <fieldset className="choice-field">
        <legend className="unseen">Photos of papers and marks</legend>
        <div className="choices">
          {photos.map(({ id, caption, name }) => (
            <label key={id} className="choice">
              <input
                type="checkbox"
                checked={chosen.has(id)}
                disabled={readOnly}
                onChange={(event) =>
                  set(
                    event.target.checked ? [...owner.photos, id] : owner.photos.filter((each) => each !== id),
                  )
                }
              />
              <span>{caption || name}</span>
            </label>
          ))}
        </div>
      </fieldset>
    </details>
  );
}
