/** First and last year, both taken in. */
export type YearSpan = readonly [from: number, to: number];

/**
 * A span of years as a caption prints it: `1760–1790`; one year alone where both ends are the same.
 *
 * @throws RangeError if a year is not a whole number or the span runs backwards
 */
export function formatYears(span: YearSpan): string {
  const [from, to] = span;
  if (!Number.isInteger(from) || !Number.isInteger(to) || from > to) {
    throw new RangeError(`formatYears needs two whole years, the earlier first, got ${from} and ${to}`);
  }
  return from === to ? `${from}` : `${from}–${to}`;
}

/** Years as read from what a person typed. */
export type ParsedYears = { ok: true; years: YearSpan; asEntered: string } | { ok: false; message: string };

/**
 * Which years did the person write?
 *
 * Method: one year (`1775`), a span (`1760–1790`, `1760 to 1790`, `1760-90`), a decade (`1760s`), or about a year
 * (`about 1775`, `c. 1775`, `ca 1775`), read as ten years either side: common practice for *circa* in catalogues.
 *
 * @returns `{ ok: true, years: [from, to], asEntered }`, or `{ ok: false, message }`
 */
export function parseYears(text: string): ParsedYears {
  const asEntered = text.trim();
  const plain = asEntered
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[‐‑‒–—−]/g, '-')
    .replace(/\s+/g, ' ');
  const years = decade(plain) ?? about(plain) ?? yearOrSpan(plain);
  if (!years)
    return {
      ok: false,
      message: `“${asEntered}” can’t be read as years: write 1775, 1760–1790, 1760s or about 1775.`,
    };
  if (years[0] > years[1])
    return { ok: false, message: `“${asEntered}” runs backwards: write the earlier year first.` };
  return { ok: true, years, asEntered };
}

/** Years either side of *about*: common practice. */
const aboutYears = 10;

function decade(plain: string): YearSpan | undefined {
  const found = /^(\d{3}0)'?s$/.exec(plain);
  return found ? [Number(found[1]), Number(found[1]) + 9] : undefined;
}

function about(plain: string): YearSpan | undefined {
  const found = /^(?:about|around|circa|ca\.?|c\.?) ?(\d{4})$/.exec(plain);
  return found ? [Number(found[1]) - aboutYears, Number(found[1]) + aboutYears] : undefined;
}

function yearOrSpan(plain: string): YearSpan | undefined {
  const found = /^(\d{4})(?: ?(?:-|to|until) ?(\d{4}|\d{2}))?$/.exec(plain);
  if (!found) return undefined;
  const from = Number(found[1]);
  if (found[2] === undefined) return [from, from];
  return [from, found[2].length === 2 ? Math.floor(from / 100) * 100 + Number(found[2]) : Number(found[2])];
}
