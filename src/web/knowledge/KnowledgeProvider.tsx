import { createContext, type ReactNode, useCallback, useEffect, useState } from 'react';
import { markOwn } from '../../knowledge/markOwn.ts';
import { ownNamesOnly } from '../../knowledge/ownNamesOnly.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import { askServer } from '../record/pieceServer.ts';
import { Notice } from '../shell/Notice.tsx';

/** How one’s own signs and shops are named on every screen. */
const ownMarks = { sign: 'your own addition', shop: 'your own addition' };

export const KnowledgeHere = createContext<Knowledge | undefined>(undefined);

/** Asks for the knowledge anew, after one’s own entries have changed; true if it came. */
export const KnowledgeAnew = createContext<() => Promise<boolean>>(async () => false);

/** Loads the knowledge once and gives it to the screens inside; until then, says what it waits for. */
export function KnowledgeProvider({ children }: { children: ReactNode }) {
  const [knowledge, setKnowledge] = useState<Knowledge>();
  const [trouble, setTrouble] = useState('');
  const load = useCallback(async () => {
    const asked = await askServer<Knowledge>(fetch, '/knowledge.json');
    if (asked.came === 'answer') setKnowledge(ownNamesOnly(markOwn(asked.answer, ownMarks)));
    setTrouble(
      asked.came === 'answer'
        ? ''
        : asked.came === 'refusal'
          ? asked.message
          : 'Can’t reach Underside on this computer. Is it still running? Start it again with npm start.',
    );
    return asked.came === 'answer';
  }, []);
  useEffect(() => {
    if (knowledge !== undefined) return;
    void load();
    const again = setInterval(() => void load(), 3000);
    return () => clearInterval(again);
  }, [knowledge, load]);

  if (knowledge !== undefined)
    return (
      <KnowledgeAnew value={load}>
        <KnowledgeHere value={knowledge}>{children}</KnowledgeHere>
      </KnowledgeAnew>
    );
  return (
    <main className="page">
      {trouble === '' ? (
        <Notice title="Laying out the reference books" />
      ) : (
        <Notice title="The reference books can’t be reached" words={trouble}>
          <button type="button" className="button" onClick={() => void load()}>
            Try again
          </button>
        </Notice>
      )}
    </main>
  );
}
