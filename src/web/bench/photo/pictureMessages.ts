import type { CalculationResult } from '../../../calculations/define.ts';
import type { Picture, Point, Region } from '../../../photo/picture.ts';

/** What the page asks of the worker that holds a picture: it alone decodes the file, and gives out what is looked at. */
export type ToLooker =
  | { ask: number; say: 'open'; picture: Blob; viewPx: number }
  | { ask: number; say: 'detail'; region: Region; widthPx: number; heightPx: number }
  | { ask: number; say: 'pixels'; region: Region }
  | { ask: number; say: 'edge'; from: Point; to: Point };

export type FromLooker =
  | { ask: number; say: 'opened'; view: ImageBitmap; widthPx: number; heightPx: number }
  | { ask: number; say: 'detail'; bitmap: ImageBitmap }
  | { ask: number; say: 'pixels'; picture: Picture }
  | { ask: number; say: 'edge'; points: Point[] }
  | { ask: number; say: 'failed'; why: string };

/** What the page asks of the worker that reckons: a calculation on a part of a picture that was cut out for it. */
export type ToReckoner = {
  ask: number;
  id: string;
  /** With the places counted from the top left of the part. */
  input: unknown;
  pictures: [name: string, picture: Picture][];
};

export type FromReckoner =
  | { ask: number; say: 'progress'; share: number }
  | { ask: number; say: 'result'; result: CalculationResult<unknown> }
  | { ask: number; say: 'failed'; why: string };
