import { useCallback, useEffect, useRef, useState } from 'react';
import type { Photo } from '../../../piece/photo.ts';
import { fetchPicture, opensWhole } from '../../picture/fetchPicture.ts';
import { type OpenPicture, openPicture } from '../../picture/openPicture.ts';

/** A picture as it lies on the board: opened, with its name in what is recorded. */
export type LaidPicture = {
  open: OpenPicture;
  /** Its name in the input of a calculation: the SHA-256 of a photo of the record, or the name of the file. */
  file: string;
  /** Tells it from every other picture, so that marks come back on the one they were set on. */
  key: string;
  title: string;
  /** What it shows, for a reader who can't see it. */
  shows: string;
  /** Id of the piece's photo. */
  photo?: string;
  /** Where the file could only be opened in part. */
  note?: string;
};

export type Opening =
  | { state: 'none' }
  | { state: 'opening'; title: string; share: number | undefined }
  | { state: 'open'; laid: LaidPicture }
  | { state: 'failed'; title: string; why: string };

/** Opens one picture at a time; what was open before is put away, and leaving off ends what is under way. */
export function useOpenPicture() {
  const [opening, setOpening] = useState<Opening>({ state: 'none' });
  const scaling = useRef<{ stop: AbortController | undefined; open: OpenPicture | undefined }>({
    stop: undefined,
    open: undefined,
  });
  const away = useCallback(() => {
    scaling.current.stop?.abort();
    scaling.current.open?.close();
    scaling.current = { stop: undefined, open: undefined };
  }, []);
  useEffect(() => away, [away]);
  const start = async (title: string, fetched: Fetched, rest: Omit<LaidPicture, 'open' | 'title'>) => {
    away();
    const stop = new AbortController();
    scaling.current.stop = stop;
    setOpening({ state: 'opening', title, share: 0 });
    try {
      const blob = await fetched((share) => setOpening({ state: 'opening', title, share }), stop.signal);
      if (stop.signal.aborted) return;
      setOpening({ state: 'opening', title, share: undefined });
      const open = await openPicture(blob);
      if (stop.signal.aborted) return open.close();
      scaling.current.open = open;
      setOpening({ state: 'open', laid: { open, title, ...rest } });
    } catch (slip) {
      if (stop.signal.aborted) return;
      const why = slip instanceof Error ? slip.message : 'The picture could not be opened: try another.';
      setOpening({ state: 'failed', title, why });
    }
  };
  return {
    opening,
    openPhoto: (photo: Photo, title: string) => {
      const whole = opensWhole(photo);
      return start(title, (tell, signal) => fetchPicture(photo, tell, signal), {
        file: whole ? photo.sha256 : `view of ${photo.sha256}`,
        key: photo.sha256,
        shows: photo.alternative || photo.caption || photo.name,
        photo: photo.id,
        ...(whole
          ? {}
          : {
              note: 'Browsers can’t open this kind of file: its copy for screens lies here, and places are counted in its pixels. Save the photo as JPEG for the whole of it.',
            }),
      });
    },
    openFile: (file: File) =>
      start(file.name, async () => file, {
        file: file.name,
        key: `${file.name}.${file.size}.${file.lastModified}`,
        shows: `The file ${file.name}`,
        note: 'This file is not among the photos of the piece: what is found here is kept without its picture. Add it under Examination for others to check.',
      }),
    putAway: () => {
      away();
      setOpening({ state: 'none' });
    },
  };
}

type Fetched = (tell: (share: number) => void, signal: AbortSignal) => Promise<Blob>;
