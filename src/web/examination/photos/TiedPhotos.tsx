import { platesOf } from '../../../piece/plates.ts';
import type { ExaminationContext } from '../examinationContext.ts';

type Props = {
  context: ExaminationContext;
  label: string;
  /** What the photos bear out, behind “shows this”. */
  what: 'finding' | 'observation';
  tied: readonly string[];
  part: string | undefined;
  /** True where others of the part can be tied too. */
  choose: boolean;
  onTie: (photos: string[]) => void;
};

/** The photos that bear something out; when opened, the others of its part can be tied to it too. */
export function TiedPhotos({ context, label, what, tied, part, choose, onTie }: Props) {
  const all = platesOf(context.piece);
  const own = all.filter(({ photo }) => tied.includes(photo.id));
  const offered =
    choose && !context.readOnly
      ? all.filter((each) => each.photo.part === part || each.photo.part === undefined || own.includes(each))
      : own;
  if (offered.length === 0) return null;
  const toggle = (id: string) =>
    onTie(tied.includes(id) ? tied.filter((each) => each !== id) : [...tied, id]);
  return (
    <fieldset className="exam-tied" aria-label={label}>
      {offered.map(({ photo, plate, called }) => {
        const words = photo.alternative || photo.caption || photo.name;
        return choose && !context.readOnly ? (
          <button
            key={photo.id}
            type="button"
            className="exam-tied-photo"
            aria-pressed={tied.includes(photo.id)}
            aria-label={`${called}, ${words}: shows this ${what}`}
            onClick={() => toggle(photo.id)}
          >
            <img src={`/api/photos/${photo.sha256}/thumb`} alt="" loading="lazy" />
            <span aria-hidden="true">{plate ?? '–'}</span>
          </button>
        ) : (
          <span key={photo.id} className="exam-tied-photo">
            <img src={`/api/photos/${photo.sha256}/thumb`} alt={`${called}: ${words}`} loading="lazy" />
            <span aria-hidden="true">{plate ?? '–'}</span>
          </span>
        );
      })}
    </fieldset>
  );
}
