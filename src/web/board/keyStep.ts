import type { Point } from '../../photo/picture.ts';

/** In what an arrow key steps: by pixels, to measure; by hundredths of the picture, to point something out. */
export type StepBy = 'pixels' | 'hundredths';

/** What the steps are, in words. */
export const stepWords: Record<StepBy, string> = {
  pixels: 'by a pixel, with Shift by ten, with Alt by a hundred',
  hundredths: 'by a hundredth of the picture, with Shift by five, with Alt by a pixel',
};

/** How many pixels of the picture an arrow key moves; undefined for any other key. */
export function keyStep(
  press: { key: string; shiftKey: boolean; altKey: boolean },
  by: StepBy,
  { widthPx, heightPx }: { widthPx: number; heightPx: number },
): Point | undefined {
  const times = press.shiftKey ? (by === 'pixels' ? 10 : 5) : 1;
  const pixels = press.altKey && by === 'pixels' ? 100 : times;
  const isFine = by === 'pixels' || press.altKey;
  const [across, down] = isFine ? [pixels, pixels] : [(times * widthPx) / 100, (times * heightPx) / 100];
  const steps: Record<string, Point> = {
    ArrowLeft: [-across, 0],
    ArrowRight: [across, 0],
    ArrowUp: [0, -down],
    ArrowDown: [0, down],
  };
  return steps[press.key];
}
