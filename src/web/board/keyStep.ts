import type { Point } from '../../photo/picture.ts';

/** How many pixels of the picture an arrow key moves; undefined for any other key. */
export function keyStep(press: { key: string; shiftKey: boolean; altKey: boolean }): Point | undefined {
  const by = press.altKey ? 100 : press.shiftKey ? 10 : 1;
  const steps: Record<string, Point> = {
    ArrowLeft: [-by, 0],
    ArrowRight: [by, 0],
    ArrowUp: [0, -by],
    ArrowDown: [0, by],
  };
  return steps[press.key];
}
