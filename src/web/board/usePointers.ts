import { type PointerEvent, useRef, useState } from 'react';
import type { Point } from '../../photo/picture.ts';

/** What a finger, pen or mouse does on the board, told in screen pixels of the frame. */
export type PointerActs = {
  /** True while a mark is being set: a touch then aims, and does not push the picture about. */
  placing: boolean;
  /** Takes hold of a point that stands; answers whether there is one. */
  grab(at: Point, reachPx: number): boolean;
  pull(at: Point): void;
  letGo(): void;
  aim(at: Point | undefined): void;
  /** From where it was pressed to where it was let go. */
  place(at: Point, from: Point): void;
  pan(by: Point): void;
  zoom(factor: number, at: Point): void;
  /** Touched without moving, where no point stands. */
  touch(): void;
};

type Press = { doing: 'aim' | 'grab' | 'pan' | 'pinch'; from: Point; last: Point; far: boolean };

/** How far a press may stray and still be a touch. */
const strayPx = 4;

/** Fingers and mouse on the board: one aims, drags a point or pushes the picture; two zoom and push. */
export function usePointers(acts: PointerActs) {
  const down = useRef(new Map<number, Point>());
  const press = useRef<Press | undefined>(undefined);
  const [aiming, setAiming] = useState<'touch' | 'mouse' | undefined>(undefined);
  const placeOf = (event: PointerEvent): Point => {
    const box = event.currentTarget.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  };
  const kind = (event: PointerEvent) => (event.pointerType === 'mouse' ? 'mouse' : 'touch');
  return {
    aiming,
    handlers: {
      onPointerDown(event: PointerEvent<SVGSVGElement>) {
        const at = placeOf(event);
        down.current.set(event.pointerId, at);
        event.currentTarget.setPointerCapture(event.pointerId);
        if (down.current.size > 1) {
          press.current = { doing: 'pinch', from: at, last: at, far: true };
          acts.aim(undefined);
          setAiming(undefined);
          return;
        }
        const doing =
          event.button !== 0
            ? 'pan'
            : acts.placing
              ? 'aim'
              : acts.grab(at, event.pointerType === 'mouse' ? 14 : 26)
                ? 'grab'
                : 'pan';
        press.current = { doing, from: at, last: at, far: false };
        if (doing === 'pan') return;
        setAiming(kind(event));
        acts.aim(at);
      },
      onPointerMove(event: PointerEvent<SVGSVGElement>) {
        const at = placeOf(event);
        const held = press.current;
        if (held === undefined) {
          if (acts.placing && event.pointerType === 'mouse') {
            setAiming('mouse');
            acts.aim(at);
          }
          return;
        }
        const before = down.current.get(event.pointerId);
        if (before === undefined) return;
        down.current.set(event.pointerId, at);
        if (held.doing === 'pinch') {
          const other = [...down.current.entries()].find(([id]) => id !== event.pointerId)?.[1];
          if (other === undefined) return;
          acts.pan([(at[0] - before[0]) / 2, (at[1] - before[1]) / 2]);
          const spread = (p: Point) => Math.max(20, Math.hypot(p[0] - other[0], p[1] - other[1]));
          acts.zoom(spread(at) / spread(before), [(at[0] + other[0]) / 2, (at[1] + other[1]) / 2]);
          return;
        }
        held.far ||= Math.hypot(at[0] - held.from[0], at[1] - held.from[1]) > strayPx;
        if (held.doing === 'aim') acts.aim(at);
        else if (held.doing === 'grab' && held.far) {
          acts.aim(at);
          acts.pull(at);
        } else if (held.doing === 'pan' && held.far) {
          acts.pan([at[0] - held.last[0], at[1] - held.last[1]]);
        }
        held.last = at;
      },
      onPointerUp(event: PointerEvent<SVGSVGElement>) {
        const held = press.current;
        down.current.delete(event.pointerId);
        if (held?.doing === 'pinch' && down.current.size > 0) return;
        press.current = undefined;
        if (held?.doing === 'aim') acts.place(placeOf(event), held.from);
        else if (held?.doing === 'grab') acts.letGo();
        else if (held?.doing === 'pan' && !held.far) acts.touch();
        if (event.pointerType !== 'mouse' || !acts.placing) {
          setAiming(undefined);
          acts.aim(undefined);
        }
      },
      onPointerCancel(event: PointerEvent<SVGSVGElement>) {
        down.current.delete(event.pointerId);
        press.current = undefined;
        setAiming(undefined);
        acts.aim(undefined);
        acts.letGo();
      },
      onPointerLeave(event: PointerEvent<SVGSVGElement>) {
        if (press.current !== undefined || event.pointerType !== 'mouse') return;
        setAiming(undefined);
        acts.aim(undefined);
      },
    },
  };
}
