import { useCallback, useEffect, useRef, useState } from 'react';
import { dropText, keepText, keptTextFor, readKeptText } from './keptText.ts';
import { useTextKey } from './TextPlace.tsx';

/** How long the hand may rest before what was typed is kept. */
const restMs = 700;

/** A field as it is typed in. */
export type Typed = {
  text: string;
  type: (text: string) => void;
  keep: () => void;
  /** Text that was typed here before the page was left, while another value came in meanwhile: to be used or let go. */
  left: { text: string; use: () => void; drop: () => void } | undefined;
};

/**
 * Keeps what is typed as it is typed: each letter on this device at once, and as an act after a short rest of the hand, on
 * leaving the field, and when the page is put away. Between times the text on the screen is the typist's own. A page that
 * was left in the midst of it shows the text again.
 *
 * @param name   of the field, by which its text is found again
 * @param value  what the record has
 * @param save   called with the text when it differs from what the record has
 * @param holds  true where `save` makes no act: the text then stays on this device until its page lets it go
 */
export function useTyped(name: string, value: string, save: (text: string) => void, holds = false): Typed {
  const key = useTextKey(name);
  const [typed, setTyped] = useState(() => keptTextFor(key, value));
  const [left, setLeft] = useState(() => leftFor(key, value));
  const latest = useRef({ typed, value, save, key, stood: value });
  latest.current = { ...latest.current, value, save, key };

  const keep = useCallback(() => {
    const { typed: text, value: kept, save: saveNow, key: under } = latest.current;
    if (text === undefined) return;
    latest.current.typed = undefined;
    setTyped(undefined);
    if (text !== kept) saveNow(text);
    // An act is set aside in the moment it is made, so that the text is in two places or in the other.
    if (!holds) dropText(under);
  }, [holds]);
  useEffect(() => {
    if (typed === undefined) return;
    const rest = setTimeout(keep, restMs);
    return () => clearTimeout(rest);
  }, [typed, keep]);
  useEffect(() => {
    const leave = () => document.visibilityState === 'hidden' && keep();
    addEventListener('pagehide', keep);
    document.addEventListener('visibilitychange', leave);
    return () => {
      removeEventListener('pagehide', keep);
      document.removeEventListener('visibilitychange', leave);
      keep();
    };
  }, [keep]);

  const type = (text: string) => {
    if (latest.current.typed === undefined && !holds) latest.current.stood = value;
    latest.current.typed = text;
    setTyped(text);
    setLeft(undefined);
    keepText(key, { text, stood: latest.current.stood });
  };
  return {
    text: typed ?? value,
    type,
    keep,
    left:
      left === undefined
        ? undefined
        : {
            text: left,
            use: () => type(left),
            drop: () => {
              setLeft(undefined);
              dropText(key);
            },
          },
  };
}

/** Text that another value has come in the way of. */
function leftFor(key: string, value: string): string | undefined {
  const kept = readKeptText(key);
  if (kept?.text === value) dropText(key);
  return kept !== undefined && kept.stood !== value && kept.text !== value ? kept.text : undefined;
}
