import { useState } from 'react';
import { askAccess, troubleOf } from './askAccess.ts';

/** What a device that came over the network sees of itself, and its way out. */
export function OwnSession({ device }: { device: string | null }) {
  const [trouble, setTrouble] = useState('');
  const out = async (path: string) => {
    const asked = await askAccess(path, {});
    setTrouble(troubleOf(asked));
    if (asked.came === 'answer') location.assign('/');
  };
  if (device !== null)
    return (
      <p>
        This device is paired as <strong>{device}</strong>, and signs in by a key of its own. It is shut out
        on the office computer: Settings, then Devices.
      </p>
    );
  return (
    <section className="stack" aria-labelledby="own">
      <h2 id="own">Signed in by the passphrase</h2>
      <p>
        Devices are paired and shut out on the office computer. What waits on this device to be handed over
        stays on it when you sign out.
      </p>
      {trouble === '' ? null : (
        <p className="caution" role="alert">
          {trouble}
        </p>
      )}
      <div className="row">
        <button type="button" className="button" onClick={() => void out('sign-out')}>
          Sign out
        </button>
        <button type="button" className="button quiet" onClick={() => void out('sign-out-everywhere')}>
          Sign everybody out
        </button>
      </div>
    </section>
  );
}
