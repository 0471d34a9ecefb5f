import type { Owner } from '../piece/owner.ts';
import type { Piece } from '../piece/piece.ts';
import type { YearSpan } from '../units/years.ts';

/** An owner of the piece as `provenance.check` asks for it, with the id it is kept under beside. */
export type AskedOwner = { id: string; asked: ReturnType<typeof askedOwner> };

/** The owners of a piece that have a name, as they were entered. */
export function ownersOf({ owners }: Pick<Piece, 'owners'>): AskedOwner[] {
  return Object.values(owners)
    .filter(({ name }) => name.trim() !== '')
    .map((each) => ({ id: each.id, asked: askedOwner(each) }));
}

/** What `provenance.check` is asked of these owners, held against the years of making where findings were weighed. */
export function askedChain(owners: readonly AskedOwner[], years: YearSpan | undefined) {
  return {
    owners: owners.map(({ asked }) => asked),
    ...(years === undefined
      ? {}
      : { made: [Math.round(years[0]), Math.round(years[1])] as [number, number] }),
  };
}

function askedOwner({ id: _, evidence, photos: __, bornIn, diedIn, began, ended, ...rest }: Owner) {
  return {
    ...rest,
    source: [evidence === undefined ? '' : evidenceWords[evidence], rest.source.trim()]
      .filter((each) => each !== '')
      .join(': '),
    ...(bornIn === undefined && diedIn === undefined
      ? {}
      : { lived: [bornIn ?? null, diedIn ?? null] as [number | null, number | null] }),
    ...(began === undefined ? {} : { began: [...began] as [number, number] }),
    ...(ended === undefined ? {} : { ended: [...ended] as [number, number] }),
  };
}

/** What a holding is known by, as the notes of the statement have it. */
export const evidenceWords = {
  mark: 'Mark on the piece',
  'names-it': 'Paper of the time that names this piece',
  'names-like': 'Paper that names a piece like this one',
  'later-paper': 'Later paper',
  family: 'Family statement',
  trade: 'Statement of the trade',
} as const;
