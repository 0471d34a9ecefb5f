import { plainSigns } from './plainSigns.ts';
import { writtenLength } from './writtenLength.ts';

/** A length as read from what a person typed: in millimetres, with their own words kept. */
export type ParsedLength = { ok: true; mm: number; asEntered: string } | { ok: false; message: string };

/**
 * What length did the person write?
 *
 * Method: odd spaces, full-width signs, primes and vulgar fractions are turned into plain ones, then the text is
 * matched against the ways the trade writes a length: inches with fractions or decimals, feet and inches,
 * millimetres, centimetres, metres. A bare number is inches. Fractions stay whole numbers until one last division,
 * so that no fraction library is needed and every result is the nearest number there is.
 * What can be read in two ways (`371/8`, `1,200 mm`, `37,5`) is refused with a sentence that says how to write it.
 *
 * @param text  what was typed, e.g. `37 1/8`, `37⅛"`, `37-1/8`, `3 ft 1 1/8 in`, `3' 1 1/8"`, `943 mm`, `94,3 cm`
 * @returns     `{ ok: true, mm, asEntered }` with mm > 0, or `{ ok: false, message }`
 * @accuracy    1 inch = 25.4 mm and 1 foot = 304.8 mm exactly
 * @source      NIST SP 811 (2008), appendix B: the inch and foot of the 1959 agreement
 */
export function parseLength(text: string): ParsedLength {
  const asEntered = text.trim();
  const plain = plainSigns(text);
  if (plain === '') return refuse(`Write a length, ${waysToWrite}.`);
  if (/^[-−–]/.test(plain))
    return refuse(`A length is more than nothing: write it without a minus, ${waysToWrite}.`);
  const outcome = writtenLength(plain);
  if (outcome === undefined) {
    return refuse(`“${asEntered}” can’t be read as a length: write ${waysToWrite}.`);
  }
  if (typeof outcome === 'string') return refuse(outcome);
  const mm = outcome.numerator / outcome.denominator;
  if (!Number.isFinite(mm) || mm > longestMm) {
    return refuse(`“${asEntered}” is longer than any piece of furniture: check the figure and its unit.`);
  }
  if (mm <= 0) return refuse(`A length is more than nothing: write ${waysToWrite}.`);
  return { ok: true, mm, asEntered };
}

const waysToWrite = 'for instance 37 1/8, 3 ft 1 1/8 in or 943 mm';
const longestMm = 1e6;

function refuse(message: string): ParsedLength {
  return { ok: false, message };
}

/** How finely inches are written, and whether with one-sign fractions (⅛) where there is such a sign. */
export type InchStyle = { denominator?: 2 | 4 | 8 | 16 | 32 | 64; vulgar?: boolean };

/**
 * A length as the trade writes it in inches: `37 1/8`.
 *
 * Method: rounded to the nearest part of an inch (sixteenths when not said), halves away from nothing, and reduced.
 *
 * @param mm     any finite number of millimetres; a difference may be negative
 * @param style  `{ denominator, vulgar }`: the finest part; `vulgar` writes `37⅛` where such a sign exists
 * @throws RangeError if mm is not a finite number
 * @source 1 in = 25.4 mm exactly, NIST SP 811 (2008), appendix B
 */
export function formatInches(mm: number, style: InchStyle = {}): string {
  requireFinite('formatInches', mm);
  const denominator = style.denominator ?? 16;
  const parts = Math.round((Math.abs(mm) * 5 * denominator) / 127);
  const sign = mm < 0 && parts > 0 ? '−' : '';
  const whole = Math.floor(parts / denominator);
  const over = parts % denominator;
  if (over === 0) return `${sign}${whole}`;
  const shared = greatestCommonDivisor(over, denominator);
  const fraction = `${over / shared}/${denominator / shared}`;
  const oneSign = style.vulgar ? oneSignFractions[fraction] : undefined;
  if (oneSign) return `${sign}${whole === 0 ? '' : whole}${oneSign}`;
  return whole === 0 ? `${sign}${fraction}` : `${sign}${whole} ${fraction}`;
}

/**
 * A length in millimetres: `943 mm`, and one decimal below 20 mm, where a whole millimetre is coarse: `3.2 mm`.
 *
 * @param mm        any finite number of millimetres
 * @param decimals  how many decimals, 0–6; chosen by size when left out
 * @throws RangeError if mm is not a finite number
 */
export function formatMm(mm: number, decimals?: number): string {
  requireFinite('formatMm', mm);
  const places = decimals ?? (Math.abs(mm) < 20 ? 1 : 0);
  const shifted = Math.round(Math.abs(mm) * 10 ** places) / 10 ** places;
  const digits = shifted.toFixed(places);
  const trimmed = decimals === undefined ? digits.replace(/\.0$/, '') : digits;
  return `${mm < 0 && shifted > 0 ? '−' : ''}${trimmed} mm`;
}

/**
 * A length in both units, as opinions print it: `37 1/8 in (943 mm)`.
 *
 * @param mm     any finite number of millimetres
 * @param style  as for `formatInches`
 * @throws RangeError if mm is not a finite number
 */
export function formatBoth(mm: number, style: InchStyle = {}): string {
  return `${formatInches(mm, style)} in (${formatMm(mm)})`;
}

const oneSignFractions: Record<string, string> = {
  '1/2': '½',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
};

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

function requireFinite(name: string, mm: number): void {
  if (!Number.isFinite(mm)) throw new RangeError(`${name} needs a finite number of millimeters, got ${mm}`);
}
