import { type RefObject, useEffect, useRef, useState } from 'react';
import type { Region } from '../../photo/picture.ts';
import { type BoardView, type Size, seen } from './boardView.ts';
import type { ShownPicture } from './shownPicture.ts';

/** How long the view has to rest before a sharper part of the picture is asked for. */
const restMs = 140;

/**
 * Draws what is to be seen of a picture: from its small view at once, and sharper once the worker has drawn that part from the
 * original.
 */
export function usePictureCanvas(
  canvas: RefObject<HTMLCanvasElement | null>,
  picture: ShownPicture,
  view: BoardView | undefined,
  frame: Size,
): void {
  const detail = useRef<{ bitmap: ImageBitmap; region: Region } | undefined>(undefined);
  const [arrived, setArrived] = useState(0);
  useEffect(
    () => () => {
      detail.current?.bitmap.close();
      detail.current = undefined;
    },
    [],
  );
  useEffect(() => {
    void arrived;
    const on = canvas.current;
    const pen = on?.getContext('2d');
    if (on === null || on === undefined || !pen || view === undefined) return;
    const dense = density();
    const [wide, high] = [Math.round(frame.widthPx * dense), Math.round(frame.heightPx * dense)];
    if (on.width !== wide || on.height !== high) [on.width, on.height] = [wide, high];
    pen.clearRect(0, 0, wide, high);
    const shrunk = picture.view.width / picture.widthPx;
    const draw = (bitmap: ImageBitmap, region: Region) => {
      const scale = view.scale * dense;
      pen.imageSmoothingEnabled = scale * (region.widthPx / bitmap.width) < 3;
      pen.drawImage(
        bitmap,
        (region.x - view.left) * scale,
        (region.y - view.top) * scale,
        region.widthPx * scale,
        region.heightPx * scale,
      );
    };
    draw(picture.view, { x: 0, y: 0, widthPx: picture.widthPx, heightPx: picture.heightPx });
    const sharper = detail.current;
    if (sharper !== undefined && view.scale * dense > shrunk) draw(sharper.bitmap, sharper.region);
  }, [canvas, picture, view, frame, arrived]);
  useEffect(() => {
    if (view === undefined) return;
    const dense = density();
    const shrunk = picture.view.width / picture.widthPx;
    if (view.scale * dense <= shrunk * 1.05 || shrunk === 1) return;
    const state = { gone: false };
    const rest = setTimeout(async () => {
      const region = seen(view, picture, frame);
      const share = Math.min(1, view.scale * dense);
      try {
        const bitmap = await picture.detail(
          region,
          Math.max(1, Math.round(region.widthPx * share)),
          Math.max(1, Math.round(region.heightPx * share)),
        );
        if (state.gone) return bitmap.close();
        detail.current?.bitmap.close();
        detail.current = { bitmap, region };
        setArrived((count) => count + 1);
      } catch {
        // The small view stays: blurred, and true.
      }
    }, restMs);
    return () => {
      state.gone = true;
      clearTimeout(rest);
    };
  }, [picture, view, frame]);
}

/** Device pixels a screen pixel, held to two: more costs memory and shows nothing. */
export function density(): number {
  return Math.min(2, globalThis.devicePixelRatio || 1);
}
