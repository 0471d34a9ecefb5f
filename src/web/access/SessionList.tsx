import type { AccessAnswer } from '../../server/access/homeAccessRoutes.ts';
import { browserWords } from './browserWords.ts';
import { momentWords } from './momentWords.ts';

/** Whoever is signed in by the passphrase. */
export function SessionList({
  sessions,
  change,
}: {
  sessions: AccessAnswer['sessions'];
  change: (path: string) => Promise<string>;
}) {
  return (
    <section className="stack" aria-labelledby="signed-in">
      <h2 id="signed-in">Signed in by the passphrase</h2>
      {sessions.length === 0 ? (
        <p className="soft">Nobody.</p>
      ) : (
        <ul className="device-list">
          {sessions.map(({ id, browser, begun, seen }) => (
            <li key={id}>
              <div>
                <strong>{browserWords(browser)}</strong>
                <span className="soft">
                  Since {momentWords(begun)}; last seen {momentWords(seen)}
                </span>
              </div>
              <button
                type="button"
                className="button quiet"
                onClick={() => void change(`sessions/${id}/end`)}
              >
                Sign out
              </button>
            </li>
          ))}
        </ul>
      )}
      <div className="row">
        <button type="button" className="button quiet" onClick={() => void change('sign-out-everywhere')}>
          Sign everybody out
        </button>
      </div>
      <p className="soft">A paired device comes in again by its key; to keep it out, shut it out above.</p>
    </section>
  );
}
