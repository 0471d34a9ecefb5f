import { useEffect, useRef, useState } from 'react';
import type { Photo } from '../../../piece/photo.ts';
import { TextField } from '../../fields/TextField.tsx';
import { TextPlace } from '../../fields/TextPlace.tsx';
import { capital, type ExamRoom } from '../examRoom.ts';
import { MarkBoard } from './MarkBoard.tsx';
import { MarkList } from './MarkList.tsx';
import { describePhoto, drawMark, nextNumber, withdrawMark, withdrawPhoto } from './photoActs.ts';
import type { MarkKind, Place } from './placeMark.ts';

type Props = { room: ExamRoom; photo: Photo; called: string; onClose: () => void };

/** One photo, large: its marks, its words, the part it shows. */
export function PhotoBench({ room, photo, called, onClose }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [chosen, setChosen] = useState<string | undefined>(undefined);
  useEffect(() => heading.current?.focus(), []);
  const add = (kind: MarkKind, points: Place[]) => {
    const id = crypto.randomUUID();
    room.record(drawMark(photo, { id, number: nextNumber(photo), kind, points, words: '' }));
    setChosen(id);
  };
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
        <MarkBoard
          photo={photo}
          readOnly={room.readOnly}
          chosen={chosen}
          onChoose={setChosen}
          onAdd={add}
          onChange={(mark) => room.record(drawMark(photo, mark))}
        />
        <div className="stack">
          <TextPlace key={photo.id} name={photo.id}>
            <TextField
              label="Caption"
              note="Printed under the plate."
              value={photo.caption}
              readOnly={room.readOnly}
              save={(caption) => room.record(describePhoto(photo.id, { caption }))}
            />
            <TextField
              label="What it shows, for a reader who can’t see it"
              value={photo.alternative}
              readOnly={room.readOnly}
              save={(alternative) => room.record(describePhoto(photo.id, { alternative }))}
            />
          </TextPlace>
          <div className="field">
            <label htmlFor="exam-photo-part">Part it shows</label>
            <select
              id="exam-photo-part"
              value={photo.part ?? ''}
              disabled={room.readOnly}
              onChange={(event) =>
                room.record(
                  describePhoto(photo.id, {
                    part: event.target.value === '' ? undefined : event.target.value,
                  }),
                )
              }
            >
              <option value="">The whole piece, or none</option>
              {room.parts.map((part) => (
                <option key={part.id} value={part.id}>
                  {capital(part.name)}
                </option>
              ))}
            </select>
          </div>
          <MarkList
            room={room}
            photo={photo}
            chosen={chosen}
            onChoose={setChosen}
            onChange={(mark) => room.record(drawMark(photo, mark))}
            onWithdraw={(id) => room.record(withdrawMark(photo, id))}
          />
          <p className="small soft">
            {photo.name} · {photo.widthPx} × {photo.heightPx} px
            {photo.camera === undefined ? '' : ` · ${photo.camera}`}
            {photo.takenAt === undefined
              ? ' · when it was taken is not known'
              : ` · ${photo.takenAt.replace('T', ' ')}, time zone not known`}{' '}
            · <a href={`/api/photos/${photo.sha256}/original`}>the original file</a>
          </p>
          {!room.readOnly && (
            <button
              type="button"
              className="button quiet"
              onClick={() => {
                room.record(withdrawPhoto(room.piece, photo.id));
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
