import type { Point, Region } from '../../photo/picture.ts';

/** How a picture lies in its frame: screen pixels for one of the picture's, and the place of the picture at the frame's top left corner. */
export type BoardView = { scale: number; left: number; top: number };
export type Size = { widthPx: number; heightPx: number };

const mostScale = 24;

/** The whole picture in the frame. */
export function fitted(picture: Size, frame: Size): BoardView {
  const scale = Math.min(frame.widthPx / picture.widthPx, frame.heightPx / picture.heightPx) || 1;
  return settled({ scale, left: 0, top: 0 }, picture, frame);
}

/** Nearer or further, about a place of the frame that stays where it is. */
export function zoomed(
  view: BoardView,
  factor: number,
  [x, y]: Point,
  picture: Size,
  frame: Size,
): BoardView {
  const scale = Math.min(mostScale, Math.max(fitScale(picture, frame), view.scale * factor));
  const left = view.left + x / view.scale - x / scale;
  const top = view.top + y / view.scale - y / scale;
  return settled({ scale, left, top }, picture, frame);
}

/** Moved by screen pixels. */
export function panned(view: BoardView, [dx, dy]: Point, picture: Size, frame: Size): BoardView {
  return settled(
    { ...view, left: view.left - dx / view.scale, top: view.top - dy / view.scale },
    picture,
    frame,
  );
}

/** So that a place of the picture can be seen, with some room about it. */
export function showing(view: BoardView, place: Point, picture: Size, frame: Size): BoardView {
  const [x, y] = toFrame(view, place);
  const room = Math.min(48, frame.widthPx / 6, frame.heightPx / 6);
  const dx = x < room ? room - x : x > frame.widthPx - room ? frame.widthPx - room - x : 0;
  const dy = y < room ? room - y : y > frame.heightPx - room ? frame.heightPx - room - y : 0;
  return dx === 0 && dy === 0 ? view : panned(view, [dx, dy], picture, frame);
}

/** Where a place of the picture lies in the frame; the middle of the first pixel is [0, 0]. */
export function toFrame({ scale, left, top }: BoardView, [x, y]: Point): Point {
  return [(x + 0.5 - left) * scale, (y + 0.5 - top) * scale];
}

/** Which place of the picture lies there. */
export function toPicture({ scale, left, top }: BoardView, [x, y]: Point): Point {
  return [x / scale + left - 0.5, y / scale + top - 0.5];
}

/** What of the picture is to be seen, in whole pixels. */
export function seen(view: BoardView, picture: Size, frame: Size): Region {
  const [x, y] = [Math.max(0, Math.floor(view.left)), Math.max(0, Math.floor(view.top))];
  const right = Math.min(picture.widthPx, Math.ceil(view.left + frame.widthPx / view.scale));
  const bottom = Math.min(picture.heightPx, Math.ceil(view.top + frame.heightPx / view.scale));
  return { x, y, widthPx: Math.max(1, right - x), heightPx: Math.max(1, bottom - y) };
}

/** True if nothing of the picture lies outside the frame. */
export function isWhole(view: BoardView, picture: Size, frame: Size): boolean {
  return view.scale <= fitScale(picture, frame) * 1.001;
}

function fitScale(picture: Size, frame: Size): number {
  return Math.min(frame.widthPx / picture.widthPx, frame.heightPx / picture.heightPx) || 1;
}

/** Held so that the picture fills the frame, or lies in its middle where it is smaller. */
function settled({ scale, left, top }: BoardView, picture: Size, frame: Size): BoardView {
  const axis = (at: number, pictureSide: number, frameSide: number) => {
    const room = pictureSide - frameSide / scale;
    return room <= 0 ? room / 2 : Math.max(0, Math.min(room, at));
  };
  return {
    scale,
    left: axis(left, picture.widthPx, frame.widthPx),
    top: axis(top, picture.heightPx, frame.heightPx),
  };
}
