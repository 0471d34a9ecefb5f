import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { RecordedEvent } from '../../piece/event.ts';
import { askServer } from '../record/pieceServer.ts';
import {
  type HistoryPage,
  joinNewest,
  joinOlder,
  type LoadedHistory,
  nothingLoaded,
} from './loadedHistory.ts';

/** The acts of a piece as far as they have been fetched, the newest always among them. */
export type History = {
  events: readonly RecordedEvent[];
  /** How many acts there are, fetched or not. */
  total: number;
  trouble: string;
  /** Fetches acts that are older; undefined where none are. */
  older: ((most: number) => Promise<void>) | undefined;
};

const firstPage = 200;

/** The history of a piece, its newest acts first; asked for again whenever the record has moved on to `seq`. */
export function useHistory(id: string, seq: number): History {
  const [loaded, setLoaded] = useState<LoadedHistory>(nothingLoaded);
  const [trouble, setTrouble] = useState('');
  const here = useRef(id);
  here.current = id;
  const ask = useCallback(
    async (query: string, join: (now: LoadedHistory, page: HistoryPage) => LoadedHistory) => {
      const path = `/api/pieces/${encodeURIComponent(id)}/history?${query}`;
      const asked = await askServer<HistoryPage>(fetch, path);
      if (here.current !== id) return;
      if (asked.came === 'answer') setLoaded((now) => join(now, asked.answer));
      if (asked.came === 'answer') setTrouble('');
      else if (asked.came === 'refusal') setTrouble(asked.message);
      else setTrouble('Can’t reach Underside on this computer: what is shown may be behind.');
    },
    [id],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: `seq` is what makes it ask again
  useEffect(() => void ask(`most=${firstPage}`, joinNewest), [ask, seq]);
  const { events, total, older: place } = loaded;
  const older = useMemo(
    () =>
      place === undefined ? undefined : (most: number) => ask(`most=${most}&before=${place}`, joinOlder),
    [ask, place],
  );
  return { events, total, trouble, older };
}
