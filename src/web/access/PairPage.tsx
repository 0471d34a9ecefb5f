import { type FormEvent, useId, useState } from 'react';
import { keepIdentity, readIdentity } from '../record/identity.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { troubleOf } from './askAccess.ts';
import { canHaveKey, pairDevice } from './deviceKey.ts';
import './access.css';

/** What a device opens from the code on the office screen: it is given a name, and gets a key of its own. */
export default function PairPage() {
  usePageTitle('Pair this device');
  const [code, setCode] = useState(() => decodeURIComponent(location.hash.slice(1)).slice(0, 40));
  const [name, setName] = useState(() => readIdentity().device);
  const [trouble, setTrouble] = useState('');
  const [isBusy, setBusy] = useState(false);
  const field = useId();
  const pair = async (submit: FormEvent) => {
    submit.preventDefault();
    setBusy(true);
    const asked = await pairDevice(code, name);
    setBusy(false);
    if (asked.came !== 'answer') return setTrouble(troubleOf(asked));
    keepIdentity({ ...readIdentity(), device: asked.answer.name });
    location.replace('/');
  };
  return (
    <main className="page access-page stack">
      <p className="house-name">Underside</p>
      <h1>Pair this device</h1>
      {canHaveKey() ? (
        <form className="stack" onSubmit={(submit) => void pair(submit)}>
          <div className="field">
            <label htmlFor={`${field}-name`}>Name of this device</label>
            <span className="note" id={`${field}-name-note`}>
              The history says by it where something was entered. It can’t be changed later.
            </span>
            <input
              id={`${field}-name`}
              type="text"
              value={name}
              maxLength={60}
              autoComplete="off"
              aria-describedby={`${field}-name-note`}
              onChange={(typed) => setName(typed.target.value)}
            />
          </div>
          <div className="field">
            <label htmlFor={`${field}-code`}>Code</label>
            <span className="note" id={`${field}-code-note`}>
              From the Devices page of the office computer. It is good for ten minutes and for one device.
            </span>
            <input
              id={`${field}-code`}
              type="text"
              value={code}
              autoComplete="off"
              autoCapitalize="characters"
              spellCheck={false}
              aria-describedby={`${field}-code-note`}
              onChange={(typed) => setCode(typed.target.value)}
            />
          </div>
          {trouble === '' ? null : (
            <p className="caution" role="alert">
              {trouble}
            </p>
          )}
          <div className="row">
            <button type="submit" className="button" disabled={isBusy || code === '' || name.trim() === ''}>
              {isBusy ? 'One moment' : 'Pair'}
            </button>
          </div>
        </form>
      ) : (
        <p className="caution">
          This device does not trust the office computer yet, and can’t be given a key. On the office computer
          open Settings, then Devices: it says which page to open here first.
        </p>
      )}
    </main>
  );
}
