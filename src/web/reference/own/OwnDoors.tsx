import { Link } from '@tanstack/react-router';
import { useReadOnly } from '../../record/useReadOnly.ts';
import type { ShelfId } from '../shelves.ts';

/** The doors to one's own additions, on the shelves that can hold them. */
export function OwnDoors({ shelf }: { shelf: ShelfId }) {
  const readOnly = useReadOnly() !== null;
  if (shelf !== 'signs' && shelf !== 'shops') return null;
  const kind = shelf === 'signs' ? 'sign' : 'shop';
  return (
    <p className="row own-doors">
      {readOnly ? null : (
        <Link to="/reference/own" search={{ kind }}>
          Add a {kind} of your own
        </Link>
      )}
      <Link to="/reference/own" search={{}}>
        Your own additions
      </Link>
    </p>
  );
}
