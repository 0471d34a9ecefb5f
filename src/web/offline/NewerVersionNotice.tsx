import { useState } from 'react';
import { useNewerVersion } from './useNewerVersion.ts';
import './offline.css';

/** Says that a newer version of the app has come, and goes over to it only when asked. */
export function NewerVersionNotice() {
  const { newer, goOver } = useNewerVersion();
  const [later, setLater] = useState(false);
  if (newer === 'none' || later) return null;
  return (
    <aside className="newer-version" aria-label="Newer version">
      <p>
        {newer === 'waits'
          ? 'A newer version is here. What you have entered stays as it is.'
          : 'Another tab has gone over to a newer version. What you have entered stays as it is.'}
      </p>
      <div className="row">
        <button type="button" className="button quiet" onClick={goOver}>
          Use it now
        </button>
        <button type="button" className="button plain" onClick={() => setLater(true)}>
          Later
        </button>
      </div>
    </aside>
  );
}
