import { useSyncExternalStore } from 'react';
import { counted } from '../../ground/words.ts';
import { useDesk } from '../record/DeskProvider.tsx';

/** On every page of a record that is only looked at: that nothing can be entered, why, and how it could be. */
export function ReadOnlyBand() {
  const desk = useDesk();
  const { readOnly, waiting } = useSyncExternalStore(desk.watchAbove, desk.above);
  if (readOnly === null) return null;
  return (
    <aside className="read-only-band" aria-label="Read-only">
      <p>
        <strong>Read-only.</strong> {readOnly.short}
      </p>
      {waiting === 0 ? null : (
        <p role="status">
          {counted(waiting, 'entry waits', 'entries wait')} in this browser, and will be handed in when
          Underside is started on this record to work in it.
        </p>
      )}
      <details>
        <summary>What this means</summary>
        <p>{readOnly.words}</p>
        <p>{readOnly.instead}</p>
      </details>
    </aside>
  );
}
