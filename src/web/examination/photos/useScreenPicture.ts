import { useEffect, useState } from 'react';
import type { Photo } from '../../../piece/photo.ts';
import type { ShownPicture } from '../../board/shownPicture.ts';
import { fetchPicture } from '../../picture/fetchPicture.ts';
import { type OpenPicture, openPicture } from '../../picture/openPicture.ts';

/** A photo for the board: its copy for screens at once; the original is opened, in a worker, only where one looks nearer than that holds. */
export function useScreenPicture(photo: Photo): ShownPicture | 'failed' | undefined {
  const [shown, setShown] = useState<ShownPicture | 'failed'>();
  const { sha256, widthPx, heightPx } = photo;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the file of a photo stays what it is while its words and marks change
  useEffect(() => {
    const stop = new AbortController();
    const desk = {
      view: undefined as ImageBitmap | undefined,
      open: undefined as Promise<OpenPicture> | undefined,
    };
    const opened = () => (desk.open ??= fetchPicture(photo, () => {}, stop.signal).then(openPicture));
    const load = async () => {
      const answer = await fetch(`/api/photos/${sha256}/view`, { signal: stop.signal });
      if (!answer.ok) throw new Error(`${answer.status}`);
      const view = await createImageBitmap(await answer.blob());
      if (stop.signal.aborted) return view.close();
      desk.view = view;
      setShown({
        widthPx,
        heightPx,
        view,
        async detail({ x, y, ...size }, wide, high) {
          const original = await opened();
          // What browsers can't open is opened from its copy for screens.
          const by = original.widthPx / widthPx;
          const region = { x: x * by, y: y * by, widthPx: size.widthPx * by, heightPx: size.heightPx * by };
          return original.detail(region, wide, high);
        },
      });
    };
    load().catch(() => stop.signal.aborted || setShown('failed'));
    return () => {
      stop.abort();
      desk.view?.close();
      void desk.open?.then(
        (one) => one.close(),
        () => {},
      );
    };
  }, [sha256, widthPx, heightPx]);
  return shown;
}
