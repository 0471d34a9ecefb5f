import type { Standing } from './wording.ts';

const [wide, high] = [34, 20];

/** A small field hatched as a part of that standing is hatched on the drawing. */
export function hatchSwatch(standing: Standing): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${wide} ${high}" width="${wide}" height="${high}"><rect x="0.5" y="0.5" width="${wide - 1}" height="${high - 1}" fill="#fff" stroke="#2b2622"/>${marks[standing]}</svg>`;
}

const lines = (rising: boolean) =>
  Array.from({ length: 7 }, (_, index) => {
    const x = index * 7 - 9;
    const [from, to] = rising ? [high - 1, 1] : [1, high - 1];
    const [x1, x2] = [Math.max(x, 1), Math.min(x + 18, wide - 1)];
    const y = (at: number) => from + ((at - x) / 18) * (to - from);
    return `<path d="M${x1} ${y(x1)}L${x2} ${y(x2)}" stroke="#2b2622" stroke-width="0.8"/>`;
  }).join('');

const marks: Record<Standing, string> = {
  'of-the-making': '',
  repair: lines(true),
  improve: lines(true) + lines(false),
  'other-old': [5, 10, 15]
    .flatMap((y) => [5, 11, 17, 23, 29].map((x) => `<circle cx="${x}" cy="${y}" r="1.1" fill="#2b2622"/>`))
    .join(''),
  unsure: [6, 14]
    .flatMap((y) =>
      [5, 17].map((x) => `<path d="M${x + (y - 6)} ${y}h5" stroke="#2b2622" stroke-width="0.9"/>`),
    )
    .join(''),
};
