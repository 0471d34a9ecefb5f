/** The pixels of a picture, upright: row by row from the top left, 8 bits a channel. */
export type Picture = {
  widthPx: number;
  heightPx: number;
  /** 1 grey · 3 red, green, blue · 4 the same and opacity. */
  channels: 1 | 3 | 4;
  /** widthPx · heightPx · channels values. */
  pixels: Uint8Array | Uint8ClampedArray;
};

/** A rectangle of a picture in pixels; x to the right and y down from the top left. */
export type Region = { x: number; y: number; widthPx: number; heightPx: number };

/** A place in a picture, in pixels: x to the right, y down. */
export type Point = readonly [number, number];
