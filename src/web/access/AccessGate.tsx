import { lazy, type ReactNode, Suspense, useCallback, useEffect, useRef, useState } from 'react';
import type { DoorStanding } from '../../server/access/signInRoutes.ts';
import { askAccess } from './askAccess.ts';
import { DoorHere } from './doorHere.ts';
import './access.css';

const SignInPage = lazy(() => import('./SignInPage.tsx'));
const PairPage = lazy(() => import('./PairPage.tsx'));

/** Looked at so often, in a page that came over the network, whether it is still signed in. */
const lookEveryMs = 20_000;

type Out = { hasPassphrase: boolean; words: string };

/**
 * Asks who is at the door before the screens are used. At the computer itself nothing is asked; a paired device signs in by its key without a
 * word; without a network the screens open with what the device has. Whoever is signed out in the midst of work keeps the page, with a band.
 */
export function AccessGate({ children }: { children: ReactNode }) {
  const [door, setDoor] = useState<DoorStanding>();
  const [out, setOut] = useState<Out>();
  const [isAsking, setAsking] = useState(false);
  const wasIn = useRef(false);

  const look = useCallback(async () => {
    const stood = await standing();
    if (stood === undefined) return;
    setDoor(stood.door);
    setOut(stood.out);
    if (stood.out === undefined) {
      wasIn.current = true;
      setAsking(false);
    }
  }, []);

  const isNetwork = door?.door === 'network';
  useEffect(() => {
    void look();
    const again = () => {
      if (document.visibilityState === 'visible') void look();
    };
    addEventListener('online', again);
    document.addEventListener('visibilitychange', again);
    const timer = isNetwork ? setInterval(again, lookEveryMs) : undefined;
    return () => {
      removeEventListener('online', again);
      document.removeEventListener('visibilitychange', again);
      clearInterval(timer);
    };
  }, [look, isNetwork]);

  if (location.pathname === '/pair')
    return (
      <Suspense>
        <PairPage />
      </Suspense>
    );
  if (out !== undefined && (isAsking || !wasIn.current))
    return (
      <Suspense>
        <SignInPage {...out} signedIn={() => (wasIn.current ? void look() : location.reload())} />
      </Suspense>
    );
  return (
    <DoorHere value={door}>
      {out === undefined ? null : (
        <aside className="signed-out-band" aria-label="Signed out">
          <p role="status">This device is signed out. What you enter is kept on it. {out.words}</p>
          <button type="button" className="button quiet" onClick={() => setAsking(true)}>
            Sign in
          </button>
        </aside>
      )}
      {children}
    </DoorHere>
  );
}

/** How this page stands at the door, after the key of a paired device was tried; undefined where nobody answers. */
async function standing(): Promise<{ door: DoorStanding; out?: Out } | undefined> {
  const asked = await askAccess<DoorStanding>('standing');
  if (asked.came !== 'answer') return undefined;
  const door = asked.answer;
  if (door.door === 'home' || door.signedIn) return { door };
  const { signInByKey } = await import('./deviceKey.ts');
  const byKey = await signInByKey();
  if (byKey?.came === 'nothing') return undefined;
  if (byKey?.came === 'answer') return { door: { ...door, signedIn: true, device: byKey.answer.name } };
  return { door, out: { hasPassphrase: door.hasPassphrase, words: byKey?.message ?? '' } };
}
