import { Link, useSearch } from '@tanstack/react-router';
import { useDeferredValue, useId, useMemo, useState } from 'react';
import { counted } from '../../ground/words.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { OpenedEntry } from './OpenedEntry.tsx';
import { OwnDoors } from './own/OwnDoors.tsx';
import { ShelfList } from './ShelfList.tsx';
import { SignFilterFields } from './SignFilterFields.tsx';
import { askedFor, groupsWithWords, shelfGroups, shelfIds, shelves } from './shelves.ts';
import { filtersIn, groupsThatPass } from './signFilters.ts';
import './reference.css';
import './referencePrint.css';

/** The reference books: signs, forms, alterations, shops, woods and sources, to browse, search and link to. */
export function ReferencePage() {
  const knowledge = useKnowledge();
  const asked = useSearch({ from: '/reference' });
  const { shelf, entry } = askedFor(asked);
  const filters = shelf === 'signs' ? filtersIn(asked) : {};
  const [words, setWords] = useState('');
  const wanted = useDeferredValue(words);
  const search = useId();
  const groups = useMemo(() => shelfGroups(shelf, knowledge), [shelf, knowledge]);
  const passed = shelf === 'signs' ? groupsThatPass(groups, filters, knowledge) : groups;
  const found = groupsWithWords(passed, wanted);
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
            {counted(count, 'entry', 'entries')}
          </span>
        </div>
        {shelf === 'signs' ? <SignFilterFields filters={filters} /> : null}
        <OwnDoors shelf={shelf} />
        <ShelfList
          shelf={shelf}
          groups={found}
          entry={entry}
          filters={filters}
          narrowed={wanted.trim() !== '' || Object.keys(filters).length > 0}
        />
        {count === 0 ? <p className="said">Nothing on this shelf has all of these words.</p> : null}
      </div>
      <OpenedEntry shelf={shelf} entry={entry} groups={found} filters={filters} />
    </div>
  );
}
