import { Link } from '@tanstack/react-router';
import { useReadOnly } from '../../record/useReadOnly.ts';
import type { OwnKind } from './fieldShapes.ts';

/** Says of an entry that the user added it, with the way to change it. */
export function OwnMark({ kind, id }: { kind: OwnKind; id: string }) {
  const readOnly = useReadOnly() !== null;
  return (
    <p className="row">
      <span className="mark">kept apart from the program’s files</span>
      {readOnly ? null : (
        <Link className="no-print" to="/reference/own" search={{ kind, id }}>
          Change or remove it
        </Link>
      )}
    </p>
  );
}
