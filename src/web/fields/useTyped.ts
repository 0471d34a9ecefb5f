import { useCallback, useEffect, useRef, useState } from 'react';

/** How long the hand may rest before what was typed is kept. */
const restMs = 700;

/**
 * Keeps what is typed as it is typed: after a short rest of the hand, on leaving the field, and when the page is
 * put away. Between times the text on the screen is the typist's own.
 *
 * @param value  what the record has
 * @param save   called with the text when it differs from what the record has
 */
export function useTyped(value: string, save: (text: string) => void) {
  const [typed, setTyped] = useState<string>();
  const latest = useRef({ typed, value, save });
  latest.current = { typed: latest.current.typed, value, save };

  const keep = useCallback(() => {
    const { typed: text, value: kept, save: saveNow } = latest.current;
    if (text === undefined) return;
    latest.current.typed = undefined;
    setTyped(undefined);
    if (text !== kept) saveNow(text);
  }, []);
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

  return {
    text: typed ?? value,
    type: (text: string) => {
      latest.current.typed = text;
      setTyped(text);
    },
    keep,
  };
}
