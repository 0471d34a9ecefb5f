import { Link } from '@tanstack/react-router';
import { type Group, type Listed, type ShelfId, shelves } from './shelves.ts';
import type { SignFilters } from './signFilters.ts';

/** A shelf with more entries than this shows its groups shut, so that it opens at once and is read at a glance. */
const mostOpen = 80;

type ShelfListProps = {
  shelf: ShelfId;
  groups: readonly Group[];
  entry: string | undefined;
  filters: SignFilters;
  /** Whether the person looked for words or narrowed the shelf: then every group that is left stands open. */
  narrowed: boolean;
};

/** The entries of a shelf in their groups; a long shelf opens group by group. */
export function ShelfList({ shelf, groups, entry, filters, narrowed }: ShelfListProps) {
  const count = groups.reduce((sum, group) => sum + group.entries.length, 0);
  const list = (group: Group) => (
    <ul className="bare-list shelf-list">
      {group.entries.map((one) => (
        <li key={one.id}>
          <EntryLink shelf={shelf} one={one} open={one.id === entry} filters={filters} />
        </li>
      ))}
    </ul>
  );
  if (count <= mostOpen || groups.length === 1)
    return groups.map((group) => (
      <section key={group.name} aria-label={group.name}>
        <h2>{group.name}</h2>
        {list(group)}
      </section>
    ));
  return groups.map((group) => (
    <details
      key={`${group.name} ${narrowed}`}
      className="shelf-group"
      open={narrowed || group.entries.some((one) => one.id === entry) ? true : undefined}
    >
      <summary>
        <h2>{group.name}</h2>
        <span className="soft small">{group.entries.length}</span>
      </summary>
      {list(group)}
    </details>
  ));
}

type EntryLinkProps = { shelf: ShelfId; one: Listed; open: boolean; filters: SignFilters };

function EntryLink({ shelf, one, open, filters }: EntryLinkProps) {
  return (
    <Link
      to="/reference"
      search={{ [shelves[shelf].one]: one.id, ...filters }}
      aria-current={open ? 'true' : undefined}
      activeProps={{}}
      preload={false}
    >
      {one.name}
      {one.note === '' ? null : <span className="soft small"> {one.note}</span>}
    </Link>
  );
}
