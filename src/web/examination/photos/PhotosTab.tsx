import { type DragEvent, useState } from 'react';
import { platesOf } from '../../../piece/plates.ts';
import type { ExaminationContext } from '../examinationContext.ts';
import { PhotoBench } from './PhotoBench.tsx';
import { PhotoButtons } from './PhotoButtons.tsx';
import { PhotoCard } from './PhotoCard.tsx';
import { UploadList } from './UploadList.tsx';

/** All photos of the piece in the order of the plates; dropped, taken or chosen here. */
export function PhotosTab({ context }: { context: ExaminationContext }) {
  const [openId, setOpenId] = useState<string | undefined>(undefined);
  const [over, setOver] = useState(false);
  const photos = platesOf(context.piece);
  const open = photos.find(({ photo }) => photo.id === openId);
  if (open !== undefined) {
    return (
      <PhotoBench
        key={open.photo.id}
        context={context}
        photo={open.photo}
        called={open.called}
        onClose={() => setOpenId(undefined)}
      />
    );
  }
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    context.uploads.add(event.dataTransfer.files, {});
  };
  return (
    <div className="stack">
      {!context.readOnly && (
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
          <PhotoButtons uploads={context.uploads} belongs={{}} about="of the piece" />
          <p className="small soft">
            or drop them here. JPEG, PNG, WebP, TIFF and HEIC are kept exactly as they come.
          </p>
        </div>
      )}
      <UploadList uploads={context.uploads} />
      {photos.length === 0 ? (
        <p className="soft">No photos yet.</p>
      ) : (
        <ol className="exam-plates">
          {photos.map((plated, index) => (
            <PhotoCard
              key={plated.photo.id}
              context={context}
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
