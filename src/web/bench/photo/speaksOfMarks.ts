import type { SpeaksOf } from '../benchRoom.ts';

export type ToolKind =
  | 'hand-planed'
  | 'rotary-planer'
  | 'straight-saw'
  | 'circular-saw'
  | 'band-saw'
  | 'sliced';

export type KindLikelihoods = Readonly<Record<ToolKind, number>>;

/** The signs that tool marks speak of, each with the kinds of mark that are it, and what to look for besides. */
const signKinds: readonly { sign: string; kinds: readonly ToolKind[]; besides?: string }[] = [
  { sign: 'planer-ripple', kinds: ['rotary-planer'] },
  { sign: 'jack-plane-tracks', kinds: ['hand-planed'] },
  { sign: 'saw-arcs-circular', kinds: ['circular-saw'] },
  { sign: 'saw-lines-band', kinds: ['band-saw'] },
  {
    sign: 'saw-lines-pit',
    kinds: ['straight-saw'],
    besides:
      'The measure does not tell a pit saw from a mill’s sash saw: even lines, square across, are the mill’s.',
  },
  {
    sign: 'saw-lines-sash',
    kinds: ['straight-saw'],
    besides:
      'The measure does not tell a mill’s sash saw from a pit saw: lines that change their slant are the pit’s.',
  },
  { sign: 'veneer-knife-cut-thin', kinds: ['sliced'], besides: 'Measure its thickness at an edge as well.' },
  {
    sign: 'veneer-sawn-by-machine',
    kinds: ['circular-saw', 'band-saw'],
    besides: 'On veneer only, where it is worn or lifted.',
  },
  {
    sign: 'veneer-sawn-by-hand',
    kinds: ['straight-saw'],
    besides: 'On veneer only; measure at an edge how even it is.',
  },
];

export type MarksSign = { sign: string; ratio: number; speaksOf: SpeaksOf; besides?: string };

/**
 * How probable the marks make each sign: the mean likelihood of the kinds that are the sign against the mean of the others.
 *
 * @param likelihoods  of every kind, in proportion, above 0
 * @returns the signs, the most probable first; `ratio` is present : absent
 */
export function marksSpeakOf(likelihoods: KindLikelihoods): MarksSign[] {
  const all = Object.entries(likelihoods) as [ToolKind, number][];
  const mean = (values: number[]) => values.reduce((sum, each) => sum + each, 0) / values.length;
  return signKinds
    .map(({ sign, kinds, besides }) => {
      const present = mean(all.filter(([kind]) => kinds.includes(kind)).map(([, each]) => each));
      const absent = mean(all.filter(([kind]) => !kinds.includes(kind)).map(([, each]) => each));
      return {
        sign,
        ratio: present / absent,
        speaksOf: { signs: [sign], likelihoods: { present, absent } },
        ...(besides === undefined ? {} : { besides }),
      };
    })
    .toSorted((a, b) => b.ratio - a.ratio);
}

/** A ratio in words that keep its side: `12 to 1 for`, `4 to 1 against`. */
export function ratioWords(ratio: number): string {
  if (ratio > 0.95 && ratio < 1.05) return 'neither for nor against';
  const [large, side] = ratio >= 1 ? [ratio, 'for'] : [1 / ratio, 'against'];
  return `${large >= 10 ? Math.round(large) : Number(large.toFixed(1))} to 1 ${side}`;
}
