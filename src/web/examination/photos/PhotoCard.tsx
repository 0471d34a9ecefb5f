import { capital, counted } from '../../../ground/words.ts';
import { shortWords } from '../../../piece/observationWords.ts';
import type { Plated } from '../../../piece/plates.ts';
import { partName } from '../../drawer/partName.ts';
import type { ExaminationContext } from '../examinationContext.ts';
import { describePhoto, movePlate } from './photoActs.ts';

type Props = {
  context: ExaminationContext;
  plated: Plated;
  first: boolean;
  last: boolean;
  onOpen: () => void;
};

/** One photo in the order of the plates. */
export function PhotoCard({ context, plated, first, last, onOpen }: Props) {
  const { photo, called } = plated;
  const name = photo.caption || photo.name;
  const shows = [
    ...Object.values(context.piece.findings)
      .filter(({ photos }) => photos.includes(photo.id))
      .map(({ sign }) => context.knowledge.signs[sign]?.name ?? sign),
    ...Object.values(context.piece.observations)
      .filter(({ photos }) => photos.includes(photo.id))
      .map(({ words }) => `your own: ${shortWords(words, 40)}`),
  ];
  return (
    <li className="exam-plate">
      <button
        type="button"
        className="exam-plate-open"
        onClick={onOpen}
        aria-label={`Open ${called}: ${name}`}
      >
        <img src={`/api/photos/${photo.sha256}/thumb`} alt={photo.alternative || name} loading="lazy" />
      </button>
      <div className="exam-plate-words">
        <p>
          <strong>{called}</strong> <span className="said">{name}</span>
        </p>
        <p className="small soft">
          {[
            photo.part === undefined ? '' : capital(partName(context.parts, photo.part)),
            photo.marks.length === 0 ? '' : counted(photo.marks.length, 'mark'),
            shows.join('; '),
            photo.takenAt === undefined ? '' : `${photo.takenAt.replace('T', ' ')}, zone not known`,
          ]
            .filter((each) => each !== '')
            .join(' · ')}
        </p>
        {photo.alternative === '' && (
          <p className="small exam-doubt">Not yet described for a reader who can’t see it.</p>
        )}
        {!context.readOnly && (
          <div className="exam-plate-moves">
            <button
              type="button"
              className="button plain"
              disabled={first}
              onClick={() => context.record(movePlate(context.piece, photo.id, -1))}
            >
              Earlier <span className="unseen">: {name}</span>
            </button>
            <button
              type="button"
              className="button plain"
              disabled={last}
              onClick={() => context.record(movePlate(context.piece, photo.id, 1))}
            >
              Later <span className="unseen">: {name}</span>
            </button>
            <label className="exam-print">
              <input
                type="checkbox"
                checked={photo.asPlate}
                onChange={(event) =>
                  context.record(describePhoto(photo.id, { asPlate: event.target.checked }))
                }
              />
              Printed
              <span className="unseen">: {name}</span>
            </label>
          </div>
        )}
      </div>
    </li>
  );
}
