import { type DragEvent, useState } from 'react';
import { platesOf } from '../../../piece/plates.ts';
import type { ExamRoom } from '../examRoom.ts';
import { PhotoBench } from './PhotoBench.tsx';
import { PhotoButtons } from './PhotoButtons.tsx';
import { PhotoCard } from './PhotoCard.tsx';
import { UploadList } from './UploadList.tsx';

/** All photos of the piece in the order of the plates; dropped, taken or chosen here. */
export function PhotosTab({ room }: { room: ExamRoom }) {
  const [openId, setOpenId] = useState<string | undefined>(undefined);
  const [over, setOver] = useState(false);
  const photos = platesOf(room.piece);
  const open = photos.find(({ photo }) => photo.id === openId);
  if (open !== undefined) {
    return (
      <PhotoBench
        key={open.photo.id}
        room={room}
        photo={open.photo}
        called={open.called}
        onClose={() => setOpenId(undefined)}
      />
    );
  }
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    room.uploads.add(event.dataTransfer.files, {});
  };
  return (
    <div className="stack">
      {!room.readOnly && (
        // biome-ignore lint/a11y/noStaticElementInteractions: dropping is a convenience; the buttons inside do the same
        <div
          className="exam-drop"
          data-over={over ? '' : undefined}
          onDragOver={(event) => {
            event.preventDefault();
            setOver(true);
          }}
          onDragLeave={() => setOver(false)}
          onDrop={drop}
        >
          <PhotoButtons uploads={room.uploads} belongs={{}} about="of the piece" />
          <p className="small soft">
            or drop them here. JPEG, PNG, WebP, TIFF and HEIC are kept exactly as they come.
          </p>
        </div>
      )}
      <UploadList uploads={room.uploads} />
      {photos.length === 0 ? (
        <p className="soft">No photos yet.</p>
      ) : (
        <ol className="exam-plates">
          {photos.map((plated, index) => (
            <PhotoCard
              key={plated.photo.id}
              room={room}
              plated={plated}
              first={index === 0}
              last={index === photos.length - 1}
              onOpen={() => setOpenId(plated.photo.id)}
            />
          ))}
        </ol>
      )}
    </div>
  );
}
