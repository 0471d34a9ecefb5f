import { useSyncExternalStore } from 'react';
import { useDesk } from './DeskProvider.tsx';
import type { Above } from './deskState.ts';

/** Why the record takes no entries; null while it does. */
export function useReadOnly(): Above['readOnly'] {
  const desk = useDesk();
  return useSyncExternalStore(desk.watchAbove, desk.above).readOnly;
}
