import { useCallback, useEffect, useState } from 'react';
import type { BackupStatus } from '../../server/backup/backupKeeper.ts';
import { askServer } from '../record/pieceServer.ts';

const lookAgainEveryMs = 5 * 60_000;
const changed = 'underside-backups-changed';

/** How the back-ups stand, looked at again from time to time and whenever a screen changed them. */
export function useBackups(): { status: BackupStatus | undefined; look: () => Promise<void> } {
  const [status, setStatus] = useState<BackupStatus>();
  const look = useCallback(async () => {
    const asked = await askServer<BackupStatus>(fetch, '/api/backups');
    if (asked.came === 'answer') setStatus(asked.answer);
  }, []);
  useEffect(() => {
    const lookAgain = () => void look();
    const whenSeen = () => document.visibilityState === 'visible' && lookAgain();
    lookAgain();
    const timer = setInterval(lookAgain, lookAgainEveryMs);
    window.addEventListener(changed, lookAgain);
    document.addEventListener('visibilitychange', whenSeen);
    return () => {
      clearInterval(timer);
      window.removeEventListener(changed, lookAgain);
      document.removeEventListener('visibilitychange', whenSeen);
    };
  }, [look]);
  return { status, look };
}

/** Tells every screen that shows back-ups to look again. */
export function tellBackupsChanged(): void {
  window.dispatchEvent(new Event(changed));
}
