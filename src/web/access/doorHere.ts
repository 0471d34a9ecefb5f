import { createContext, useContext } from 'react';
import type { DoorStanding } from '../../server/access/signInRoutes.ts';

export const DoorHere = createContext<DoorStanding | undefined>(undefined);

/** By which door this page came; undefined until that is known, as without a network. */
export function useDoor(): DoorStanding | undefined {
  return useContext(DoorHere);
}
