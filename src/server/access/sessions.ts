import { createHash, randomBytes, randomUUID } from 'node:crypto';
import type { AccessFile, Session } from './accessFile.ts';

/**
 * How long somebody stays signed in: at most so long, and no longer than so long without a question. A device's key asks anew by
 * itself, so that its sessions are short.
 *
 * @source NIST SP 800-63B-4, 2.1.3: asked anew at least every 30 days (from memory); the rest ours
 */
const hour = 3_600_000;
const lasts = {
  passphrase: { mostMs: 30 * 24 * hour, idleMs: 7 * 24 * hour },
  device: { mostMs: 24 * hour, idleMs: 24 * hour },
};
const mostSessions = 200;
/** A disk need not be written for every question: when one was last seen is kept to some minutes. */
const seenEveryMs = 5 * 60_000;

/** Who is signed in. */
export type Sessions = {
  /** Begins one, with a token that nobody has seen before. */
  begin(by: { device?: string; browser: string }): Promise<{ token: string; session: Session }>;
  /** The session of a token that is still good. */
  find(token: string): Session | undefined;
  /** Those that are still good. */
  list(): Session[];
  end(id: string): Promise<void>;
  endAll(): Promise<void>;
};

export function openSessions(file: AccessFile, now: () => number): Sessions {
  const isGood = ({ seen, ends, device }: Session) =>
    now() < ends && now() - seen < (device === undefined ? lasts.passphrase : lasts.device).idleMs;
  const seen = (session: Session) => {
    if (now() - session.seen < seenEveryMs) return;
    const change = (one: Session) => (one.id === session.id ? { ...one, seen: now() } : one);
    void file
      .change((state) => ({ ...state, sessions: state.sessions.map(change) }))
      .catch(() => {
        // A full disk: when it was last seen is not worth refusing an entry for.
      });
  };
  return {
    async begin({ device, browser }) {
      const token = randomBytes(32).toString('base64url');
      const { mostMs } = device === undefined ? lasts.passphrase : lasts.device;
      const session: Session = {
        id: randomUUID(),
        tokenHash: hashOf(token),
        ...(device === undefined ? {} : { device }),
        begun: now(),
        seen: now(),
        ends: now() + mostMs,
        browser: browser.slice(0, 200),
      };
      // A device has one session at a time: what it had before is ended.
      const stays = (one: Session) => isGood(one) && (device === undefined || one.device !== device);
      await file.change((state) => ({
        ...state,
        sessions: [...state.sessions.filter(stays), session].slice(-mostSessions),
      }));
      return { token, session };
    },
    find(token) {
      if (!/^[\w-]{43}$/.test(token)) return undefined;
      // Found by its hash: how long this takes tells nothing of a token.
      const hash = hashOf(token);
      const found = file.state.sessions.find((one) => one.tokenHash === hash);
      if (found === undefined || !isGood(found)) return undefined;
      seen(found);
      return found;
    },
    list: () => file.state.sessions.filter(isGood),
    end: (id) =>
      file.change((state) => ({ ...state, sessions: state.sessions.filter((one) => one.id !== id) })),
    endAll: () => file.change((state) => ({ ...state, sessions: [] })),
  };
}

function hashOf(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}
