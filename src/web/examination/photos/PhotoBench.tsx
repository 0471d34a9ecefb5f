import { useEffect, useRef, useState } from 'react';
import { capital } from '../../../ground/words.ts';
import type { Photo, PhotoMark } from '../../../piece/photo.ts';
import { PhotoBoard } from '../../board/PhotoBoard.tsx';
import type { Marks } from '../../board/useMarks.ts';
import { TextField } from '../../fields/TextField.tsx';
import { TextPlace } from '../../fields/TextPlace.tsx';
import type { ExaminationContext } from '../examinationContext.ts';
import { MarkList } from './MarkList.tsx';
import { describePhoto, drawMark, withdrawPhoto } from './photoActs.ts';
import { newMark, usePhotoMarks } from './usePhotoMarks.ts';
import { useScreenPicture } from './useScreenPicture.ts';

type Props = { context: ExaminationContext; photo: Photo; called: string; onClose: () => void };

/** One photo, large: its marks, its words, the part it shows. */
export function PhotoBench({ context, photo, called, onClose }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  const marks = usePhotoMarks(context, photo);
  useEffect(() => heading.current?.focus(), []);
  return (
    <section className="exam-photo">
      <div className="row">
        <button type="button" className="button quiet" onClick={onClose}>
          All photos
        </button>
        <h2 ref={heading} tabIndex={-1}>
          {called}
        </h2>
      </div>
      <div className="exam-photo-bench">
        <MarkedPhoto photo={photo} marks={marks} readOnly={context.readOnly} />
        <div className="stack">
          <TextPlace key={photo.id} name={photo.id}>
            <TextField
              label="Caption"
              note="Printed under the plate."
              value={photo.caption}
              readOnly={context.readOnly}
              save={(caption) => context.record(describePhoto(photo.id, { caption }))}
            />
            <TextField
              label="What it shows, for a reader who can’t see it"
              value={photo.alternative}
              readOnly={context.readOnly}
              save={(alternative) => context.record(describePhoto(photo.id, { alternative }))}
            />
          </TextPlace>
          <div className="field">
            <label htmlFor="exam-photo-part">Part it shows</label>
            <select
              id="exam-photo-part"
              value={photo.part ?? ''}
              disabled={context.readOnly}
              onChange={(event) =>
                context.record(
                  describePhoto(photo.id, {
                    part: event.target.value === '' ? undefined : event.target.value,
                  }),
                )
              }
            >
              <option value="">The whole piece, or none</option>
              {context.parts.map((part) => (
                <option key={part.id} value={part.id}>
                  {capital(part.name)}
                </option>
              ))}
            </select>
          </div>
          <MarkList
            context={context}
            photo={photo}
            chosen={marks.chosen}
            onChoose={marks.choose}
            onChange={(mark) => context.record(drawMark(photo, mark))}
            onWithdraw={marks.take}
          />
          <p className="small soft">
            {photo.name} · {photo.widthPx} × {photo.heightPx} px
            {photo.camera === undefined ? '' : ` · ${photo.camera}`}
            {photo.takenAt === undefined
              ? ' · when it was taken is not known'
              : ` · ${photo.takenAt.replace('T', ' ')}, time zone not known`}{' '}
            · <a href={`/api/photos/${photo.sha256}/original`}>the original file</a>
          </p>
          {!context.readOnly && (
            <button
              type="button"
              className="button quiet"
              onClick={() => {
                context.record(withdrawPhoto(context.piece, photo.id));
                onClose();
              }}
            >
              Remove from this piece (undo brings it back)
            </button>
          )}
        </div>
      </div>
    </section>
  );
}

const kinds: [PhotoMark['kind'], string][] = [
  ['point', 'Point'],
  ['line', 'Line'],
  ['outline', 'Outline'],
];

/** The picture with its marks, numbered as they are printed, and the kinds to draw. */
function MarkedPhoto({ photo, marks, readOnly }: { photo: Photo; marks: Marks; readOnly: boolean }) {
  const [kind, setKind] = useState<PhotoMark['kind']>();
  const picture = useScreenPicture(photo);
  if (picture === 'failed')
    return (
      <p className="caution" role="alert">
        The photo could not be had from the record: see whether it is reached, and open the photo again.
      </p>
    );
  if (picture === undefined) return <p role="status">Opening the photo</p>;
  return (
    <div className="stack-tight">
      {!readOnly && (
        <fieldset className="exam-tools" aria-label="Draw a mark">
          {kinds.map(([each, words]) => (
            <button
              key={each}
              type="button"
              className="exam-answer"
              aria-pressed={marks.placing !== undefined && kind === each}
              onClick={() => {
                setKind(each);
                marks.begin(newMark(photo, each));
              }}
            >
              {words}
            </button>
          ))}
        </fieldset>
      )}
      <PhotoBoard
        picture={picture}
        shows={photo.alternative || photo.caption || photo.name}
        marks={marks}
        readOnly={readOnly}
        step="hundredths"
        isRolled={false}
      />
    </div>
  );
}
