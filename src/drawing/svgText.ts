/** Words as they may stand in SVG, between tags or in an attribute. */
export function escapeXml(words: string): string {
  return words.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

/** One line of words at a place. */
export function svgText(
  words: string,
  [x, y]: readonly [number, number],
  { size, ink, anchor = 'start', turned = false, halo }: TextLook,
): string {
  const at = (mm: number) => Math.round(mm * 100) / 100;
  const turn = turned ? ` transform="rotate(-90 ${at(x)} ${at(y)})"` : '';
  const around =
    halo === undefined
      ? ''
      : ` stroke="${halo}" stroke-width="${at(size * 0.3)}" stroke-linejoin="round" paint-order="stroke"`;
  return `<text x="${at(x)}" y="${at(y)}" font-family="'Source Sans 3', 'Source Sans 3 Variable', sans-serif" font-size="${at(size)}" fill="${ink}" text-anchor="${anchor}"${around}${turn}>${escapeXml(words)}</text>`;
}

type TextLook = {
  size: number;
  ink: string;
  anchor?: 'start' | 'middle';
  turned?: boolean;
  /** The color of a rim round the letters, which keeps them legible over lines. */
  halo?: string;
};
