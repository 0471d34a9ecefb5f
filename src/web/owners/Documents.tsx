import type { Piece } from '../../piece/piece.ts';

type Props = {
  piece: Piece;
  owner: { photos: readonly string[] };
  set: (photos: string[]) => void;
  readOnly: boolean;
  /** What they show. */
  of?: string;
};

/** The photos that belong to an entry: papers and marks to a holding, pictures to a damage. */
export function Documents({ piece, owner, set, readOnly, of = 'papers and marks' }: Props) {
  const photos = Object.values(piece.photos);
  if (photos.length === 0)
    return <p className="small soft">Photos of {of} can be added on the Examination page and named here.</p>;
  const chosen = new Set(owner.photos);
  return (
    <details>
      <summary>
        Photos of {of}: {chosen.size === 0 ? 'none' : chosen.size}
      </summary>
      <fieldset className="choice-field">
        <legend className="unseen">Photos of {of}</legend>
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
