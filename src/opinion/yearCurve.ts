import { formatYears } from '../units/years.ts';
import { probableWords, toldShares } from '../weighing/probabilityWords.ts';
import type { DrawnPicture } from './opinionDocument.ts';

/** What a year curve is drawn from: shares of five-year bins by their middle or start, and the spans to mark. */
export type CurveOf = {
  density: readonly (readonly [year: number, share: number])[];
  p50: readonly [number, number];
  p90: readonly [number, number];
  examiner?: readonly [number, number] | undefined;
};

const [width, height, left, right, top, foot] = [640, 190, 14, 14, 12, 46] as const;

/** The years as a stepped curve with both spans under it, and the examiner's own as a bracket where there are any. */
export function yearCurve({ density, p50, p90, examiner }: CurveOf): DrawnPicture {
  const shown = density.filter(([year]) => year >= fromYear(density) && year <= toYear(density));
  const [first, last] = [shown[0]?.[0] ?? 1600, (shown.at(-1)?.[0] ?? 2000) + 5];
  const most = Math.max(...shown.map(([, share]) => share), 1e-9);
  const x = (year: number) =>
    left + ((Math.min(Math.max(year, first), last) - first) / (last - first)) * (width - left - right);
  const base = height - foot;
  const y = (share: number) => base - (share / most) * (base - top);
  const steps = shown
    .map(([year, share]) => `L${n(x(year))} ${n(y(share))}L${n(x(year + 5))} ${n(y(share))}`)
    .join('');
  const outline = `M${n(x(first))} ${n(base)}${steps}L${n(x(last))} ${n(base)}Z`;
  const ticks = tickYears(first, last).map(
    (year) =>
      `<path d="M${n(x(year))} ${base}v5" stroke="${ink}"/><text x="${n(x(year))}" y="${base + 19}" text-anchor="middle">${year}</text>`,
  );
  const bar = (span: readonly [number, number], at: number, thick: number, colour: string) =>
    `<path d="M${n(x(span[0]))} ${at}H${n(Math.max(x(span[1]), x(span[0]) + 2))}" stroke="${colour}" stroke-width="${thick}"/>`;
  const own =
    examiner === undefined
      ? ''
      : `<path d="M${n(x(examiner[0]))} ${base + 33}v7H${n(Math.max(x(examiner[1]), x(examiner[0]) + 2))}v-7" fill="none" stroke="${accent}" stroke-width="2"/>`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="Source Sans 3" font-size="13" fill="${ink}"><path d="${outline}" fill="${tone}" stroke="${ink}" stroke-width="1.2" stroke-linejoin="round"/><path d="M${left} ${base}H${width - right}" stroke="${ink}"/>${ticks.join('')}${bar(p90, base + 28, 2, ink)}${bar(p50, base + 28, 6, ink)}${own}</svg>`;
  const words = (span: readonly [number, number]) => formatYears([Math.round(span[0]), Math.round(span[1])]);
  const ownWords = examiner === undefined ? '' : ` The examiner concludes on ${words(examiner)}.`;
  return {
    id: 'years',
    svg,
    caption: `When the piece was made, by the findings. Thin bar: ${probableWords(toldShares.most)}; thick bar: ${probableWords(toldShares.half)}${examiner === undefined ? '' : '; bracket: the examiner’s years'}.`,
    alternative: `Curve of how probable each year of making is. It is highest about ${peak(shown)}; ${probableWords(toldShares.most)}: ${words(p90)}; ${probableWords(toldShares.half)}: ${words(p50)}.${ownWords}`,
    widthMm: 120,
    heightMm: (120 * height) / width,
  };
}

const ink = '#2b2622';
const tone = '#e3d6c4';
const accent = '#1f5f6b';

/** Where the curve is cut: beyond these lie less than one in 2000 on either side. */
function fromYear(density: CurveOf['density']): number {
  let sum = 0;
  for (const [year, share] of density) {
    sum += share;
    if (sum > 0.0005) return Math.floor(year / 25) * 25;
  }
  return 0;
}

function toYear(density: CurveOf['density']): number {
  let sum = 0;
  for (const [year, share] of density.toReversed()) {
    sum += share;
    if (sum > 0.0005) return Math.ceil((year + 5) / 25) * 25 - 5;
  }
  return 3000;
}

function peak(shown: CurveOf['density']): number {
  return shown.reduce((best, each) => (each[1] > best[1] ? each : best), shown[0] ?? ([0, 0] as const))[0];
}

function tickYears(first: number, last: number): number[] {
  const step = [5, 10, 20, 25, 50, 100].find((each) => (last - first) / each <= 8) ?? 100;
  const start = Math.ceil(first / step) * step;
  return Array.from({ length: Math.floor((last - start) / step) + 1 }, (_, index) => start + index * step);
}

function n(value: number): string {
  return `${Math.round(value * 100) / 100}`;
}
