import { createContext, type ReactNode, useContext, useSyncExternalStore } from 'react';
import type { PhotoKeeper, WaitingPhotos } from './photoKeeper.ts';

const KeeperHere = createContext<PhotoKeeper | undefined>(undefined);

/** Gives the screens inside it the keeper of photos. */
export function PhotoKeeperProvider({ keeper, children }: { keeper: PhotoKeeper; children: ReactNode }) {
  return <KeeperHere value={keeper}>{children}</KeeperHere>;
}

/** The keeper of photos of this page. */
export function usePhotoKeeper(): PhotoKeeper {
  const keeper = useContext(KeeperHere);
  if (keeper === undefined)
    throw new Error('This screen stands outside the room that has the keeper of photos.');
  return keeper;
}

/** The photos that wait on this device. */
export function useWaitingPhotos(): WaitingPhotos {
  const keeper = usePhotoKeeper();
  return useSyncExternalStore(keeper.watch, keeper.waiting);
}
