import { type FormEvent, useState } from 'react';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { askAccess, troubleOf } from './askAccess.ts';
import { SecretField } from './SecretField.tsx';
import './access.css';

/** The one page that is shown over the network to whoever is not signed in. */
export default function SignInPage({
  hasPassphrase,
  words,
  signedIn,
}: {
  hasPassphrase: boolean;
  /** Why the key of this device didn’t do, where it has one. */
  words: string;
  signedIn: () => void;
}) {
  usePageTitle('Sign in');
  const [passphrase, setPassphrase] = useState('');
  const [trouble, setTrouble] = useState('');
  const [isBusy, setBusy] = useState(false);
  const signIn = async (submit: FormEvent) => {
    submit.preventDefault();
    setBusy(true);
    const asked = await askAccess('sign-in', { passphrase });
    setBusy(false);
    if (asked.came === 'answer') return signedIn();
    setTrouble(troubleOf(asked));
  };
  return (
    <main className="page access-page stack">
      <p className="house-name">Underside</p>
      <h1>Sign in</h1>
      {words === '' ? null : <p className="caution">{words}</p>}
      {hasPassphrase ? (
        <form className="stack" onSubmit={(submit) => void signIn(submit)}>
          <SecretField
            label="Passphrase"
            note="The one chosen on the Devices page of the office computer."
            value={passphrase}
            change={setPassphrase}
            autoComplete="current-password"
          />
          {trouble === '' ? null : (
            <p className="caution" role="alert">
              {trouble}
            </p>
          )}
          <div className="row">
            <button type="submit" className="button" disabled={isBusy || passphrase === ''}>
              {isBusy ? 'One moment' : 'Sign in'}
            </button>
          </div>
        </form>
      ) : (
        <p>
          No passphrase was chosen yet. On the office computer open Settings, then Devices, and choose one.
        </p>
      )}
      <p className="soft">
        A tablet or phone that you use often is better paired: on the office computer open Settings, then
        Devices, and show it a code. Then nothing is typed any more. <a href="/pair">I have a code</a>
      </p>
      <p className="soft">
        What you entered on this device without being signed in is kept on it, and handed in after.
      </p>
    </main>
  );
}
