import { createContext, type ReactNode, useContext } from 'react';
import type { Desk } from './desk.ts';

const DeskHere = createContext<Desk | undefined>(undefined);

/** Gives the screens inside it the desk. */
export function DeskProvider({ desk, children }: { desk: Desk; children: ReactNode }) {
  return <DeskHere value={desk}>{children}</DeskHere>;
}

/** The desk of this page. */
export function useDesk(): Desk {
  const desk = useContext(DeskHere);
  if (desk === undefined) throw new Error('This screen stands outside the room that has the desk.');
  return desk;
}
