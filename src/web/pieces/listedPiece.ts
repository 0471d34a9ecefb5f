import type { Piece } from '../../piece/piece.ts';

/** A piece as the list of pieces gives it. */
export type ListedPiece = {
  id: string;
  title: string;
  form: string;
  example: boolean;
  putAway: boolean;
  status: 'draft' | 'signed';
  mode: 'in-hand' | 'photo-only';
  updatedAt?: string | null;
  openedOn?: string | null;
  findings: number;
  photos: number;
  client?: string | null;
  maker?: string | null;
  place?: string | null;
  period?: readonly [number, number] | null;
};

/** A piece kept on this device as the list gives it; when it was last touched is the record's to tell. */
export function listedFrom(piece: Piece): ListedPiece {
  const { id, title, form, example, putAway, mode, opinion, claim, engagement } = piece;
  return {
    ...{ id, title, form, example, putAway, mode },
    status: opinion.status,
    openedOn: piece.openedOn ?? null,
    findings: Object.keys(piece.findings).length,
    photos: Object.keys(piece.photos).length,
    client: engagement.client,
    maker: claim.maker ?? null,
    place: claim.place ?? null,
    period: claim.period ?? null,
  };
}

/**
 * Whether a piece answers to the words looked for: every word must be in its title, client, form, maker or place,
 * or be a year that its claimed years take in (`1770`, `1770s`).
 */
export function answersTo(words: string, listed: ListedPiece, formName: string): boolean {
  const text = plain([listed.title, listed.client, formName, listed.maker, listed.place].join(' '));
  return plain(words)
    .split(/\s+/)
    .filter((word) => word !== '')
    .every((word) => text.includes(word) || takesInYear(word, listed.period ?? undefined));
}

function takesInYear(word: string, period: readonly [number, number] | undefined): boolean {
  const found = /^(\d{4})(s?)$/.exec(word);
  if (found === null || period === undefined) return false;
  const from = Number(found[1]);
  const to = found[2] === 's' ? from + 9 : from;
  return from <= period[1] && to >= period[0];
}

/** The list in the order it is shown: what is being worked on, what is signed, the examples, what was put away. */
export function sortedIntoPlaces(pieces: readonly ListedPiece[], putAway: (listed: ListedPiece) => boolean) {
  const latestFirst = [...pieces].sort((a, b) => (b.updatedAt ?? '').localeCompare(a.updatedAt ?? ''));
  const out = latestFirst.filter((listed) => !putAway(listed));
  return {
    open: out.filter((listed) => !listed.example && listed.status === 'draft'),
    signed: out.filter((listed) => !listed.example && listed.status === 'signed'),
    examples: out.filter((listed) => listed.example),
    away: latestFirst.filter(putAway),
  };
}

function plain(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{Diacritic}/gu, '')
    .toLowerCase();
}
