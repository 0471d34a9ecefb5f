import { done, type Outcome, type Refused, refuse } from '../../ground/fault.ts';
import { takingTurns } from '../../record/turns.ts';
import type { AccessFile } from './accessFile.ts';
import { type Devices, openDevices } from './devices.ts';
import { type Guessing, openGuessing } from './guessing.ts';
import { type Cost, isPassphrase, keepPassphrase, usualCost } from './passphrase.ts';
import { openSessions, type Sessions } from './sessions.ts';

/** Guesses whose hash is being worked out, each in 128 MiB: more than so many wait elsewhere. */
const mostWaiting = 8;

/** What came of a guess; where one has to wait before the next, for how long. */
export type Tried = { ok: true } | (Refused & { waitSeconds?: number });

/** Who may come in over the network, and how they show it. */
export type Access = {
  hasPassphrase(): boolean;
  /** Chooses a passphrase; whoever is signed in by the one before is signed out. */
  choosePassphrase(passphrase: string): Promise<Outcome<undefined>>;
  /** Whether it is the passphrase; wrong ones make the next wait. */
  tryPassphrase(passphrase: string, from: string): Promise<Tried>;
  guessing: Guessing;
  sessions: Sessions;
  devices: Devices;
};

/**
 * @param now   milliseconds
 * @param cost  how much work a guess takes; less in tests
 */
export function openAccess(
  file: AccessFile,
  { now = Date.now, cost = usualCost }: { now?: () => number; cost?: Cost } = {},
): Access {
  const guessing = openGuessing(now);
  // One at a time: a heap of guesses must not fill the memory.
  const inTurn = takingTurns(1);
  const waiting = { count: 0 };
  return {
    guessing,
    sessions: openSessions(file, now),
    devices: openDevices(file, now),
    hasPassphrase: () => file.state.passphrase !== undefined,
    async choosePassphrase(passphrase) {
      const kept = await keepPassphrase(passphrase, cost);
      if (!kept.ok) return kept;
      await file.change((state) => ({
        ...state,
        passphrase: kept.value,
        sessions: state.sessions.filter(({ device }) => device !== undefined),
      }));
      return done(undefined);
    },
    async tryPassphrase(passphrase, from) {
      if (file.state.passphrase === undefined)
        return refuse(
          'access.no-passphrase',
          'No passphrase was chosen yet: choose one on the Devices page of the office computer.',
        );
      if (waiting.count >= mostWaiting) return waitFault(5);
      const wait = guessing.begin(from);
      if (wait !== undefined) return waitFault(wait);
      waiting.count += 1;
      try {
        const kept = file.state.passphrase;
        const isRight = await inTurn(() => isPassphrase(passphrase, kept));
        // Another may have been chosen meanwhile.
        if (!isRight || file.state.passphrase !== kept) return wrong();
      } finally {
        waiting.count -= 1;
      }
      guessing.right(from);
      return { ok: true };
    },
  };
}

/** Said where something was guessed wrong too often. */
export function waitFault(seconds: number): Refused & { waitSeconds: number } {
  const words = seconds < 90 ? `${seconds} seconds` : `${Math.ceil(seconds / 60)} minutes`;
  const refused = refuse(
    'access.wait',
    `There were too many wrong tries: wait ${words} and try again. At the office computer itself nothing is asked, and a paired device comes in without it.`,
  );
  return { ...refused, waitSeconds: seconds };
}

function wrong(): ReturnType<typeof refuse> {
  return refuse('access.wrong-passphrase', 'This is not the passphrase: type it again.', 'passphrase');
}
