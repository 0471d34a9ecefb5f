import { useEffect, useRef, useState } from 'react';
import type { Point, Region } from '../../photo/picture.ts';
import type { ShownPicture } from './shownPicture.ts';
import { density } from './usePictureCanvas.ts';

type Props = { picture: ShownPicture; at: Point; scale: number; side: 'left' | 'right' };

const sidePx = 132;

/** The place that is aimed at, nearer, beside the finger that hides it: each pixel of the original is told apart. */
export function Loupe({ picture, at, scale, side }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const latest = useRef<{ busy: boolean; bitmap: ImageBitmap | undefined; region: Region | undefined }>({
    busy: false,
    bitmap: undefined,
    region: undefined,
  });
  const [arrived, setArrived] = useState(0);
  const near = Math.min(12, Math.max(1, scale * 4));
  const [x, y] = at;
  useEffect(() => () => latest.current.bitmap?.close(), []);
  useEffect(() => {
    void arrived;
    const dense = density();
    const pen = canvas.current?.getContext('2d');
    if (!pen) return;
    const half = sidePx / near / 2;
    const draw = (bitmap: ImageBitmap, region: Region) => {
      const scaled = near * dense;
      pen.imageSmoothingEnabled = scaled * (region.widthPx / bitmap.width) < 3;
      pen.drawImage(
        bitmap,
        (region.x - (x + 0.5 - half)) * scaled,
        (region.y - (y + 0.5 - half)) * scaled,
        region.widthPx * scaled,
        region.heightPx * scaled,
      );
    };
    pen.clearRect(0, 0, sidePx * dense, sidePx * dense);
    draw(picture.view, { x: 0, y: 0, widthPx: picture.widthPx, heightPx: picture.heightPx });
    const { bitmap, region, busy } = latest.current;
    if (bitmap !== undefined && region !== undefined) draw(bitmap, region);
    if (busy || picture.view.width === picture.widthPx || covers(region, x, y, half)) return;
    const left = Math.max(0, Math.floor(x - 2 * half));
    const top = Math.max(0, Math.floor(y - 2 * half));
    const wanted = {
      x: left,
      y: top,
      widthPx: Math.max(1, Math.min(picture.widthPx - left, Math.ceil(4 * half))),
      heightPx: Math.max(1, Math.min(picture.heightPx - top, Math.ceil(4 * half))),
    };
    latest.current.busy = true;
    picture.detail(wanted, wanted.widthPx, wanted.heightPx).then(
      (sharp) => {
        latest.current.bitmap?.close();
        latest.current = { busy: false, bitmap: sharp, region: wanted };
        setArrived((count) => count + 1);
      },
      () => {
        latest.current.busy = false;
      },
    );
  }, [picture, x, y, near, arrived]);
  const dense = density();
  return (
    <div className="photo-loupe" data-side={side} aria-hidden="true">
      <canvas ref={canvas} width={sidePx * dense} height={sidePx * dense} />
      <svg viewBox="-66 -66 132 132" aria-hidden="true">
        <path className="photo-halo" d="M-60 0H-7M7 0H60M0 -60V-7M0 7V60" strokeWidth="3.5" />
        <path className="photo-cross" d="M-60 0H-7M7 0H60M0 -60V-7M0 7V60" strokeWidth="1.5" />
      </svg>
    </div>
  );
}

function covers(region: Region | undefined, x: number, y: number, half: number): boolean {
  return (
    region !== undefined &&
    region.widthPx >= 3 * half &&
    x - half >= region.x - 1 &&
    y - half >= region.y - 1 &&
    x + half <= region.x + region.widthPx + 1 &&
    y + half <= region.y + region.heightPx + 1
  );
}
