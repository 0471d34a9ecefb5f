import { useEffect, useState } from 'react';
import type { RecordedEvent } from '../../piece/event.ts';
import { askServer } from '../record/pieceServer.ts';

/** The recorded acts of a piece, oldest first; asked for again whenever the record has moved on to `seq`. */
export function useHistory(
  id: string,
  seq: number,
): { events: readonly RecordedEvent[] | undefined; trouble: string } {
  const [events, setEvents] = useState<readonly RecordedEvent[]>();
  const [trouble, setTrouble] = useState('');
  // biome-ignore lint/correctness/useExhaustiveDependencies: `seq` is what makes it ask again
  useEffect(() => {
    const left = { yes: false };
    void askServer<{ events: RecordedEvent[] }>(fetch, `/api/pieces/${encodeURIComponent(id)}/history`).then(
      (asked) => {
        if (left.yes) return;
        if (asked.came === 'answer') setEvents(asked.answer.events);
        if (asked.came === 'answer') setTrouble('');
        else if (asked.came === 'refusal') setTrouble(asked.message);
        else setTrouble('Can’t reach Underside on this computer: what is shown may be behind.');
      },
    );
    return () => {
      left.yes = true;
    };
  }, [id, seq]);
  return { events, trouble };
}
