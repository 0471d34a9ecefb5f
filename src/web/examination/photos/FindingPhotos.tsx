import type { Finding } from '../../../piece/finding.ts';
import { platesOf } from '../../../piece/plates.ts';
import { tiePhotos } from '../answerSign.ts';
import type { ExamRoom } from '../examRoom.ts';

type Props = { room: ExamRoom; finding: Finding | undefined; part: string | undefined; choose: boolean };

/** The photos that bear a finding out; when opened, the others of its part can be tied to it too. */
export function FindingPhotos({ room, finding, part, choose }: Props) {
  if (finding === undefined) return null;
  const all = platesOf(room.piece);
  const tied = all.filter(({ photo }) => finding.photos.includes(photo.id));
  const offered =
    choose && !room.readOnly
      ? all.filter((each) => each.photo.part === part || each.photo.part === undefined || tied.includes(each))
      : tied;
  if (offered.length === 0) return null;
  const toggle = (id: string) => {
    const has = finding.photos.includes(id);
    room.record(
      tiePhotos(finding, has ? finding.photos.filter((each) => each !== id) : [...finding.photos, id]),
    );
  };
  return (
    <fieldset className="exam-tied" aria-label="Photos of this finding">
      {offered.map(({ photo, plate, called }) => {
        const words = photo.alternative || photo.caption || photo.name;
        return choose && !room.readOnly ? (
          <button
            key={photo.id}
            type="button"
            className="exam-tied-photo"
            aria-pressed={finding.photos.includes(photo.id)}
            aria-label={`${called}, ${words}: shows this finding`}
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
