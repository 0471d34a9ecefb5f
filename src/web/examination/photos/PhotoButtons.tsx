import { useRef } from 'react';
import type { Belongs } from '../../offline/photos/heldPhoto.ts';
import type { PhotoUploads } from './usePhotoUploads.ts';

const accepted = 'image/jpeg,image/png,image/webp,image/tiff,image/heic,image/heif,.heic,.tif,.tiff';

/** Take a photo with the camera, or choose some that are already on the device. */
export function PhotoButtons({
  uploads,
  belongs,
  about,
}: {
  uploads: PhotoUploads;
  belongs: Belongs;
  about: string;
}) {
  return (
    <div className="exam-photo-buttons">
      <FileButton
        label="Take a photo"
        about={about}
        camera
        onFiles={(files) => uploads.add(files, belongs)}
      />
      <FileButton label="Choose photos" about={about} onFiles={(files) => uploads.add(files, belongs)} />
    </div>
  );
}

type FileProps = { label: string; about: string; camera?: boolean; onFiles: (files: File[]) => void };

function FileButton({ label, about, camera = false, onFiles }: FileProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button
        type="button"
        className="button quiet"
        aria-label={`${label}: ${about}`}
        onClick={() => input.current?.click()}
      >
        {label}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        accept={accepted}
        multiple={!camera}
        aria-label={`${label}: ${about}`}
        {...(camera ? { capture: 'environment' as const } : {})}
        onChange={(event) => {
          onFiles([...(event.target.files ?? [])]);
          event.target.value = '';
        }}
      />
    </>
  );
}
