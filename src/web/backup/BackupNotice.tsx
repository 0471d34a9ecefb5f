import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useBackups } from './useBackups.ts';
import './backup.css';

/** On every screen while back-ups are missing, old or failing: what is wrong, and the way to mend it. */
export function BackupNotice() {
  const { status } = useBackups();
  const [read, setRead] = useState('');
  const words = status?.warning?.words ?? '';
  if (words === '' || words === read) return null;
  return (
    <aside className="backup-notice caution" aria-label="Back-ups">
      <p>{words}</p>
      <div className="row">
        <Link to="/settings" hash="backups" className="button quiet">
          Back up
        </Link>
        <button type="button" className="button plain" onClick={() => setRead(words)}>
          Not now
        </button>
      </div>
    </aside>
  );
}
