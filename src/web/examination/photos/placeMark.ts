import type { PhotoMark } from '../../../piece/photo.ts';

export type Place = [number, number];
export type MarkKind = PhotoMark['kind'];

/** A mark being drawn: its kind, the places set so far, and the cross-hair. */
export type Drawing = { kind: MarkKind; places: Place[]; at: Place };

/** How many places a mark of a kind needs before it can stand. */
export const placesNeeded: Record<MarkKind, number> = { point: 1, line: 2, outline: 3 };

/** The drawing with a place set where the cross-hair stands, or at a place pointed to. */
export function setPlace(drawing: Drawing, at: Place = drawing.at): Drawing {
  return { ...drawing, at: within(at), places: [...drawing.places, within(at)] };
}

/** True once nothing more can be set: an outline goes on until it is closed. */
export function isComplete(drawing: Drawing): boolean {
  return drawing.kind !== 'outline' && drawing.places.length >= placesNeeded[drawing.kind];
}

/** True if the places set make a mark of this kind. */
export function canStand(drawing: Drawing): boolean {
  return drawing.places.length >= placesNeeded[drawing.kind];
}

/** A place moved by shares of the picture's width and height, held inside it. */
export function moved(place: Place, by: Place): Place {
  return within([place[0] + by[0], place[1] + by[1]]);
}

/** All places of a mark moved together, as far as the one nearest an edge allows. */
export function movedTogether(places: readonly Place[], by: Place): Place[] {
  const room = (axis: 0 | 1, step: number): number => {
    const at = places.map((place) => place[axis]);
    return Math.max(-Math.min(...at), Math.min(1 - Math.max(...at), step));
  };
  const held: Place = [room(0, by[0]), room(1, by[1])];
  return places.map((place) => moved(place, held));
}

/** What an arrow key moves: a hundredth of the picture, a twentieth with Shift; undefined for any other key. */
export function arrowStep(key: string, far: boolean): Place | undefined {
  const step = far ? 0.05 : 0.01;
  const steps: Record<string, Place> = {
    ArrowLeft: [-step, 0],
    ArrowRight: [step, 0],
    ArrowUp: [0, -step],
    ArrowDown: [0, step],
  };
  return steps[key];
}

/** A place in words: `42 % across, 31 % down`. */
export function placeWords(place: Place): string {
  return `${Math.round(place[0] * 100)} % across, ${Math.round(place[1] * 100)} % down`;
}

function within(place: Place): Place {
  const hold = (share: number) => Math.round(Math.max(0, Math.min(1, share)) * 10_000) / 10_000;
  return [hold(place[0]), hold(place[1])];
}
