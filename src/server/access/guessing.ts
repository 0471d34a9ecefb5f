import { isIPv6 } from 'node:net';

/** Counts what was guessed wrong, and says how long to wait before the next try. */
export type Guessing = {
  /**
   * Asks to try once; counted as wrong until it is said to be right, so that many tries at once gain nothing.
   *
   * @returns undefined where it may be tried now, else whole seconds to wait
   */
  begin(from: string): number | undefined;
  /** It was right: what this address guessed wrong before is forgotten. */
  right(from: string): void;
};

/**
 * Tries before any wait: of one address, and of all together. After them each wrong try doubles the wait. Whoever sits at the
 * computer itself is never asked, and a paired device signs in by its key, so that no guesser can shut them out.
 *
 * @source ours: with waits of up to a quarter of an hour some 100 guesses a day are left; NIST SP 800-63B-4, 3.2.2 wants no more than 100
 *   wrong tries in a row (from memory)
 */
const ofOne = { free: 5, firstWaitMs: 2_000, longestWaitMs: 15 * 60_000 };
const ofAll = { free: 20, firstWaitMs: 1_000, longestWaitMs: 5 * 60_000 };
const forgottenAfterMs = 24 * 3_600_000;
const mostRemembered = 2_000;

type Tries = { wrong: number; last: number };

/** @param now  milliseconds */
export function openGuessing(now: () => number): Guessing {
  const byAddress = new Map<string, Tries>();
  const all: Tries = { wrong: 0, last: 0 };
  const triesOf = (key: string): Tries => {
    const known = byAddress.get(key);
    if (known !== undefined && now() - known.last < forgottenAfterMs) return known;
    return { wrong: 0, last: 0 };
  };
  return {
    begin(from) {
      const key = networkOf(from);
      const one = triesOf(key);
      if (now() - all.last >= forgottenAfterMs) all.wrong = 0;
      const waitMs = Math.max(waitLeft(one, ofOne, now()), waitLeft(all, ofAll, now()));
      if (waitMs > 0) return Math.ceil(waitMs / 1000);
      byAddress.delete(key);
      byAddress.set(key, { wrong: one.wrong + 1, last: now() });
      const [oldest] = byAddress.keys();
      if (byAddress.size > mostRemembered && oldest !== undefined) byAddress.delete(oldest);
      all.wrong += 1;
      all.last = now();
      return undefined;
    },
    right(from) {
      byAddress.delete(networkOf(from));
      all.wrong = Math.max(0, all.wrong - 1);
    },
  };
}

function waitLeft({ wrong, last }: Tries, { free, firstWaitMs, longestWaitMs }: typeof ofOne, now: number) {
  if (wrong < free) return 0;
  return last + Math.min(longestWaitMs, firstWaitMs * 2 ** Math.min(wrong - free, 20)) - now;
}

/** One household has a whole /64 of IPv6 addresses: they count as one. */
function networkOf(address: string): string {
  const plain = address.replace(/%.*$/, '').replace(/^::ffff:(?=\d+\.)/, '');
  if (!isIPv6(plain)) return plain;
  const [head = '', tail = ''] = plain.split('::');
  const before = head === '' ? [] : head.split(':');
  const after = tail === '' ? [] : tail.split(':');
  const zeros = plain.includes('::') ? Array(Math.max(0, 8 - before.length - after.length)).fill('0') : [];
  return [...before, ...zeros, ...after].slice(0, 4).join(':');
}
