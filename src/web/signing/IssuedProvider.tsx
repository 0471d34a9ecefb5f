import { createContext, type ReactNode, useContext, useEffect, useState } from 'react';
import type { IssuedAnswer } from '../../server/issuedRoutes.ts';
import { askServer } from '../record/pieceServer.ts';

/** What was signed of the open piece; undefined until the record has told. */
export type IssuedNow = IssuedAnswer | undefined;

const Here = createContext<IssuedNow>(undefined);

/**
 * Asks what was signed of a piece, and again whenever the record has moved on to `seq`. What was told last stays while
 * the record does not answer.
 */
export function IssuedProvider({ id, seq, children }: { id: string; seq: number; children: ReactNode }) {
  const [told, setTold] = useState<{ id: string; answer: IssuedAnswer }>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: `seq` is what makes it ask again
  useEffect(() => {
    const left = { yes: false };
    void askServer<IssuedAnswer>(fetch, `/api/pieces/${encodeURIComponent(id)}/issued`).then((asked) => {
      if (!left.yes && asked.came === 'answer') setTold({ id, answer: asked.answer });
    });
    return () => {
      left.yes = true;
    };
  }, [id, seq]);
  return <Here value={told?.id === id ? told.answer : undefined}>{children}</Here>;
}

/** What was signed of the piece this screen belongs to. */
export function useIssued(): IssuedNow {
  return useContext(Here);
}
