import type { Knowledge } from '../knowledge/schema.ts';
import type { Work } from '../knowledge/workSchema.ts';
import type { Words } from './opinionDocument.ts';
import { stopped } from './wording.ts';

/** A work in a line: `Beckerdite, Easy chair, about 1955, 2002`. */
export function citeShort(id: string, sources: Knowledge['sources']): string {
  const work = sources[id];
  if (work === undefined) return id;
  return [authorsOf(work, 2), work.title, issuedOf(work)].filter((each) => each !== '').join(', ');
}

/**
 * A work as the list of sources prints it, with how far it was read and how far it can be trusted. Its note, on how it
 * was come by, is for those who tend the knowledge: the page of the work shows it (src/web/reference/SourceEntry.tsx).
 */
export function citeFull(work: Work): Words {
  const within = [
    work['container-title'] ?? '',
    work.volume === undefined ? '' : `vol. ${work.volume}`,
    work.publisher ?? '',
    issuedOf(work),
    work.page === undefined ? '' : `p. ${work.page}`,
  ].filter((each) => each !== '');
  const authors = authorsOf(work, 6);
  const read = { 'in part': 'Read in part', whole: 'Read whole', 'not read': 'Not read; cited from others' }[
    work.read
  ];
  const grade = work.grade === undefined ? '' : `, grade ${work.grade}`;
  return [
    authors === '' ? '' : `${stopped(authors)} `,
    { em: work.title },
    within.length === 0 ? '. ' : `, ${stopped(within.join(', '))} `,
    ...(work.URL === undefined ? [] : [{ link: work.URL, words: work.URL }, ' ']),
    { strong: `${read}${grade}.` },
  ];
}

/** What a work is put in order by. */
export function sortKey(work: Work): string {
  return `${authorsOf(work, 1)} ${work.title}`.trim().toLowerCase();
}

function authorsOf(work: Work, most: number): string {
  const names = work.author.map((one) => ('literal' in one ? one.literal : one.family));
  return names.length > most ? `${names.slice(0, most).join(', ')} and others` : names.join(' and ');
}

function issuedOf(work: Work): string {
  return work.issued === undefined ? '' : `${work.issued}`;
}
