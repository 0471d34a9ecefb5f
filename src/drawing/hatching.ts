/** What a part is called: of the making, or what it is instead; or that it was not looked at, so is called nothing. */
export type Standing = 'of-the-making' | 'repair' | 'improve' | 'other-old' | 'unsure' | 'not-looked-at';

export const standings: readonly Standing[] = [
  'of-the-making',
  'repair',
  'improve',
  'other-old',
  'unsure',
  'not-looked-at',
];

/** The word that always stands beside the hatching. */
export const standingWords: Readonly<Record<Standing, string>> = {
  'of-the-making': 'original',
  repair: 'later repair or renewal',
  improve: 'later, to improve',
  'other-old': 'from another old piece',
  unsure: 'unsure',
  'not-looked-at': 'not looked at',
};

/** How each standing is drawn, in words: for the key, in print and for who can't see it. */
export const hatchWords: Readonly<Record<Standing, string>> = {
  'of-the-making': 'toned, no hatching',
  repair: 'slanting lines',
  improve: 'crossed lines',
  'other-old': 'dots',
  unsure: 'sparse dashes',
  'not-looked-at': 'blank, in a pale line',
};

/** Whether parts of this standing carry a hatch. */
export function isHatched(standing: Standing): boolean {
  return standing !== 'of-the-making' && standing !== 'not-looked-at';
}

/** Whether parts of this standing are left blank and drawn in a pale line. */
export function isPale(standing: Standing | undefined): boolean {
  return standing === 'not-looked-at';
}

/** The printed drawing's colors: its line, the pale line, the tone of a part that was looked at, and the bare paper. */
export const drawnIn = { ink: '#2b2622', pale: '#8a7f73', tone: '#f3e9d4', paper: '#ffffff' } as const;

/**
 * The SVG pattern of a standing: slanting lines, crossed lines, dots, sparse dashes; nothing where it is not hatched.
 *
 * @param id   the pattern's id, unique on its page
 * @param gap  between two lines, in the drawing's mm
 */
export function hatchPattern(standing: Standing, id: string, gap: number, ink: string): string {
  const marks = marksOf(standing, gap, ink);
  if (marks === '') return '';
  return `<pattern id="${id}" patternUnits="userSpaceOnUse" width="${gap}" height="${gap}" patternTransform="rotate(45)">${marks}</pattern>`;
}

function marksOf(standing: Standing, gap: number, ink: string): string {
  const at = (share: number) => Math.round(gap * share * 1000) / 1000;
  const upright = `<path d="M ${at(0.5)} 0 V ${gap}" stroke="${ink}" stroke-width="${at(0.14)}"/>`;
  const level = `<path d="M 0 ${at(0.5)} H ${gap}" stroke="${ink}" stroke-width="${at(0.14)}"/>`;
  if (standing === 'repair') return upright;
  if (standing === 'improve') return upright + level;
  if (standing === 'other-old') {
    return `<circle cx="${at(0.5)}" cy="${at(0.5)}" r="${at(0.17)}" fill="${ink}"/>`;
  }
  if (standing === 'unsure') {
    return `<path d="M ${at(0.5)} ${at(0.2)} V ${at(0.65)}" stroke="${ink}" stroke-width="${at(0.12)}"/>`;
  }
  return '';
}
