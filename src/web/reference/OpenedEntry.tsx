import { Link, useNavigate } from '@tanstack/react-router';
import { type KeyboardEvent, useEffect, useRef } from 'react';
import { ReferenceEntry } from './ReferenceEntry.tsx';
import { type Group, neighboursOf, type ShelfId, shelves } from './shelves.ts';
import type { SignFilters } from './signFilters.ts';

type OpenedEntryProps = {
  shelf: ShelfId;
  entry: string | undefined;
  groups: readonly Group[];
  filters: SignFilters;
};

/** The entry that is open, with its neighbours on the shelf: by touch, or by the arrow keys. */
export function OpenedEntry({ shelf, entry, groups, filters }: OpenedEntryProps) {
  const article = useRef<HTMLElement>(null);
  const go = useNavigate();
  useEffect(() => {
    if (entry === undefined) return;
    article.current?.focus({ preventScroll: true });
    article.current?.scrollTo(0, 0);
    article.current?.scrollIntoView({ block: 'nearest' });
    if (matchMedia('(max-width: 50rem)').matches) window.scrollTo(0, 0);
  }, [entry]);
  if (entry === undefined) {
    return (
      <article className="entry entry-none soft">
        <p className="said">Choose an entry to read it here.</p>
      </article>
    );
  }
  const { before, after } = neighboursOf(groups, entry);
  const searchFor = (id: string) => ({ [shelves[shelf].one]: id, ...filters });
  const byKey = (event: KeyboardEvent<HTMLElement>) => {
    if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey || isChoosing(event)) return;
    const to = event.key === 'ArrowLeft' ? before : event.key === 'ArrowRight' ? after : undefined;
    if (to === undefined) return;
    event.preventDefault();
    void go({ to: '/reference', search: searchFor(to.id) });
  };
  return (
    <article
      className="entry"
      ref={article}
      tabIndex={-1}
      aria-label="The open entry"
      aria-keyshortcuts="ArrowLeft ArrowRight"
      onKeyDown={byKey}
    >
      <nav className="entry-ways" aria-label="On the shelf">
        <Link className="entry-back" to="/reference" search={{ shelf, ...filters }}>
          Back to {shelves[shelf].name.toLowerCase()}
        </Link>
        {before === undefined ? null : (
          <Link to="/reference" search={searchFor(before.id)} title="Key: left arrow">
            ← <span className="unseen">Before it: </span>
            {before.name}
          </Link>
        )}
        {after === undefined ? null : (
          <Link className="entry-after" to="/reference" search={searchFor(after.id)} title="Key: right arrow">
            <span className="unseen">After it: </span>
            {after.name} →
          </Link>
        )}
      </nav>
      <ReferenceEntry shelf={shelf} id={entry} />
    </article>
  );
}

/** In a field or a list the arrow keys belong to it. */
function isChoosing({ target }: KeyboardEvent): boolean {
  return (
    target instanceof HTMLInputElement ||
    target instanceof HTMLSelectElement ||
    target instanceof HTMLTextAreaElement
  );
}
