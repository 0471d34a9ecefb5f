import { Link, useSearch } from '@tanstack/react-router';
import { useEffect, useId, useMemo, useRef, useState } from 'react';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { ReferenceEntry } from './ReferenceEntry.tsx';
import { askedFor, groupsWithWords, type ShelfId, shelfGroups, shelfIds, shelves } from './shelves.ts';
import './reference.css';

/** The reference books: signs, alterations, shops and sources, to browse, search and link to. */
export function ReferencePage() {
  const knowledge = useKnowledge();
  const { shelf, entry } = askedFor(useSearch({ from: '/reference' }));
  const [words, setWords] = useState('');
  const search = useId();
  const groups = useMemo(() => shelfGroups(shelf, knowledge), [shelf, knowledge]);
  const found = groupsWithWords(groups, words);
  const count = found.reduce((sum, group) => sum + group.entries.length, 0);
  const name = groups.flatMap((group) => group.entries).find((one) => one.id === entry)?.name ?? '';
  usePageTitle(name, shelves[shelf].name, 'Reference');
  return (
    <div className={entry === undefined ? 'reference' : 'reference reading'}>
      <h1>Reference</h1>
      <nav className="shelves" aria-label="Shelves">
        {shelfIds.map((id) => (
          <Link
            key={id}
            to="/reference"
            search={{ shelf: id }}
            aria-current={id === shelf ? 'page' : undefined}
            activeProps={{}}
            onClick={() => setWords('')}
          >
            {shelves[id].name}
          </Link>
        ))}
      </nav>
      <div className="shelf stack">
        <div className="field">
          <label htmlFor={search}>Find in {shelves[shelf].name.toLowerCase()}</label>
          <input
            id={search}
            type="search"
            value={words}
            onChange={(change) => setWords(change.target.value)}
          />
          <span className="note" role="status">
            {count === 1 ? '1 entry' : `${count} entries`}
          </span>
        </div>
        {found.map((group) => (
          <section key={group.name} aria-label={group.name}>
            <h2>{group.name}</h2>
            <ul className="bare-list shelf-list">
              {group.entries.map((one) => (
                <li key={one.id}>
                  <EntryLink
                    shelf={shelf}
                    id={one.id}
                    open={one.id === entry}
                    name={one.name}
                    note={one.note}
                  />
                </li>
              ))}
            </ul>
          </section>
        ))}
        {count === 0 ? <p className="said">Nothing on this shelf has all of these words.</p> : null}
      </div>
      <Opened shelf={shelf} entry={entry} />
    </div>
  );
}

function Opened({ shelf, entry }: { shelf: ShelfId; entry: string | undefined }) {
  const article = useRef<HTMLElement>(null);
  useEffect(() => {
    if (entry === undefined) return;
    article.current?.focus({ preventScroll: true });
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
  return (
    <article className="entry" ref={article} tabIndex={-1} aria-label="The open entry">
      <p className="entry-back">
        <Link to="/reference" search={{ shelf }}>
          Back to {shelves[shelf].name.toLowerCase()}
        </Link>
      </p>
      <ReferenceEntry shelf={shelf} id={entry} />
    </article>
  );
}

type EntryLinkProps = { shelf: ShelfId; id: string; open: boolean; name: string; note: string };

function EntryLink({ shelf, id, open, name, note }: EntryLinkProps) {
  return (
    <Link
      to="/reference"
      search={{ [shelves[shelf].one]: id }}
      aria-current={open ? 'true' : undefined}
      activeProps={{}}
    >
      {name}
      {note === '' ? null : <span className="soft small"> {note}</span>}
    </Link>
  );
}
