import { type FormEvent, useState } from 'react';
import { SecretField } from './SecretField.tsx';

/** Chooses the passphrase, or another one. */
export function PassphraseSection({
  hasPassphrase,
  change,
}: {
  hasPassphrase: boolean;
  change: (path: string, body?: unknown) => Promise<string>;
}) {
  const [isAsking, setAsking] = useState(false);
  const [passphrase, setPassphrase] = useState('');
  const [said, setSaid] = useState('');
  const keep = async (submit: FormEvent) => {
    submit.preventDefault();
    if ((await change('passphrase', { passphrase })) !== '') return setSaid('');
    setPassphrase('');
    setAsking(false);
    setSaid('Whoever was signed in by another passphrase is signed out; paired devices are not.');
  };
  return (
    <section className="stack" aria-labelledby="passphrase">
      <h2 id="passphrase">1. Passphrase</h2>
      {said === '' ? null : <p role="status">{said}</p>}
      {hasPassphrase && !isAsking ? (
        <div className="row">
          <p>A passphrase is chosen.</p>
          <button type="button" className="button quiet" onClick={() => setAsking(true)}>
            Choose another
          </button>
        </div>
      ) : (
        <form className="stack" onSubmit={(submit) => void keep(submit)}>
          <SecretField
            label="Passphrase for other devices"
            note="At least 15 characters: four or five words that don’t belong together. It is kept so that it can’t be read back; if it is forgotten, choose another here."
            value={passphrase}
            change={setPassphrase}
            autoComplete="new-password"
          />
          <div className="row">
            <button type="submit" className="button" disabled={passphrase === ''}>
              Use this passphrase
            </button>
            {hasPassphrase ? (
              <button type="button" className="button plain" onClick={() => setAsking(false)}>
                Cancel
              </button>
            ) : null}
          </div>
        </form>
      )}
    </section>
  );
}
