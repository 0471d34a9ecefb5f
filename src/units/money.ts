/** A sum as read from what a person typed, in whole cents. */
export type ParsedMoney = { ok: true; cents: number } | { ok: false; message: string };

/**
 * Which sum of dollars did the person write: `3200`, `$3,200`, `3,200.50`, `3200 USD`?
 *
 * @returns whole cents, 0 or more; a sum with more than two places is refused rather than rounded
 */
export function parseMoney(text: string): ParsedMoney {
  const plain = text
    .normalize('NFKC')
    .replace(/\s+/g, '')
    .replace(/^(us)?\$/i, '')
    .replace(/(usd|dollars?)$/i, '');
  const found = /^(\d{1,3}(?:,\d{3})+|\d+)(?:\.(\d{1,2}))?$/.exec(plain);
  const whole = found?.[1]?.replaceAll(',', '');
  if (whole === undefined || whole.length > 12)
    return {
      ok: false,
      message: `“${text.trim()}” can’t be read as a sum of dollars: write 3200, $3,200 or 3,200.50.`,
    };
  return { ok: true, cents: Number(whole) * 100 + Number((found?.[2] ?? '').padEnd(2, '0')) };
}

/** A reckoned sum of dollars, told in whole ones: it can’t carry more. */
export function formatDollars(sum: number): string {
  return formatMoney(Math.round(sum) * 100);
}

/** A sum of cents as it is printed: `$3,200`, `$3,200.50`; a minus before the sign. */
export function formatMoney(cents: number): string {
  const rounded = Math.round(Math.abs(cents));
  const rest = rounded % 100;
  const whole = String(Math.floor(rounded / 100)).replace(/\B(?=(\d{3})+$)/g, ',');
  return `${cents < 0 && rounded > 0 ? '−' : ''}$${whole}${rest === 0 ? '' : `.${String(rest).padStart(2, '0')}`}`;
}
