import { Link, useLocation } from '@tanstack/react-router';
import './pieceNav.css';

const pages = [
  { to: '/piece/$id/engagement', name: 'Engagement' },
  { to: '/piece/$id/examination', name: 'Examination' },
  { to: '/piece/$id/readings', name: 'Readings' },
  { to: '/piece/$id/bench', name: 'Bench', isSpare: true },
  { to: '/piece/$id/condition', name: 'Condition', isSpare: true },
  { to: '/piece/$id/owners', name: 'Owners', isSpare: true },
  { to: '/piece/$id/worth', name: 'Worth', isSpare: true },
  { to: '/piece/$id/opinion', name: 'Opinion' },
  { to: '/piece/$id/history', name: 'History', isSpare: true },
] as const;

/**
 * The pages of a piece. On a phone four of them lie under the thumb, and the rest, with the doors of the house, behind “More”.
 */
export function PieceNav({ id }: { id: string }) {
  const { pathname } = useLocation();
  const spare = pages.filter((page) => 'isSpare' in page);
  const isBehind = spare.some(({ to }) => pathname === to.replace('$id', id));
  return (
    <nav className="piece-nav" aria-label="Pages of this piece">
      {pages.map((page) => (
        <Link key={page.to} to={page.to} params={{ id }} data-spare={'isSpare' in page ? '' : undefined}>
          {page.name}
        </Link>
      ))}
      <details
        key={pathname}
        className="piece-more"
        data-here={isBehind ? '' : undefined}
        onKeyDown={(event) => {
          if (event.key !== 'Escape') return;
          event.currentTarget.open = false;
          event.currentTarget.querySelector('summary')?.focus();
        }}
      >
        <summary>More</summary>
        <div className="piece-more-list">
          {spare.map((page) => (
            <Link key={page.to} to={page.to} params={{ id }}>
              {page.name}
            </Link>
          ))}
          <Link to="/">Pieces</Link>
          <Link to="/reference">Reference</Link>
          <Link to="/settings">Settings</Link>
        </div>
      </details>
    </nav>
  );
}
