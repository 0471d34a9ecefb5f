import type { Knowledge } from '../../../knowledge/schema.ts';

/** A dated sign as it is typed: one of the knowledge files by its id, or one's own with its years. */
export type TypedSign = {
  /** Empty for one's own. */
  sign: string;
  name: string;
  earliest: string;
  commonFrom: string;
  commonUntil: string;
  latest: string;
};

const years = ['earliest', 'commonFrom', 'commonUntil', 'latest'] as const;

/** The words of the four years. */
export const yearNames: Readonly<Record<(typeof years)[number], string>> = {
  earliest: 'Earliest',
  commonFrom: 'Common from',
  commonUntil: 'Common until',
  latest: 'Latest',
};

export function ownSign(): TypedSign {
  return { sign: '', name: '', earliest: '', commonFrom: '', commonUntil: '', latest: '' };
}

/** The signs of the knowledge files that have years of their own, by name. */
export function datedSigns(signs: Knowledge['signs']): { id: string; name: string }[] {
  return Object.values(signs)
    .filter(({ span }) => span !== undefined)
    .map(({ id, name, span }) => ({ id, name: `${name} (${spanShort(span)})` }))
    .toSorted((a, b) => (a.name < b.name ? -1 : 1));
}

function spanShort(span: Knowledge['signs'][string]['span']): string {
  const [from, to] = [span?.earliest ?? span?.commonFrom, span?.latest ?? span?.commonUntil];
  if (from === undefined) return `until about ${to}`;
  return to === undefined ? `from ${from}` : `${from}–${to}`;
}

/**
 * The signs as `dating.span` asks for them; where one of two years is given it stands for both, so that the sign begins or ends at once.
 *
 * @returns the signs that have a year, and what can't be read, in sentences
 */
export function signsToDate(typed: readonly TypedSign[]): {
  signs: Record<string, unknown>[];
  faults: string[];
} {
  const faults: string[] = [];
  const signs = typed.flatMap((each, index): Record<string, unknown>[] => {
    if (each.sign !== '') return [{ sign: each.sign }];
    const name = each.name.trim() || `Sign ${index + 1}`;
    const read = Object.fromEntries(
      years.flatMap((which) => {
        const text = each[which].trim();
        if (text === '') return [];
        if (/^1[0-9]{3}$|^20[0-9]{2}$/.test(text)) return [[which, Number(text)] as const];
        faults.push(
          `${name}, ${yearNames[which].toLowerCase()}: write a year in four figures, such as 1830.`,
        );
        return [];
      }),
    );
    const [from, to] = [read.earliest ?? read.commonFrom, read.latest ?? read.commonUntil];
    if (from === undefined && to === undefined) return [];
    return [
      {
        name,
        ...(from === undefined
          ? {}
          : { introduced: { earliest: from, commonFrom: read.commonFrom ?? from } }),
        ...(to === undefined ? {} : { phasedOut: { commonUntil: read.commonUntil ?? to, latest: to } }),
      },
    ];
  });
  return { signs, faults };
}
