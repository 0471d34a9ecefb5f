import { useEffect, useRef, useState } from 'react';
import { keepText, readKeptText } from './keptText.ts';
import { useTextKey } from './TextPlace.tsx';

/**
 * A line that is read as it is typed and makes no act by itself, as a length at the bench: kept on this device letter by
 * letter, and there again after a reload.
 *
 * @param begin   what stands in it at first
 * @param onText  told the line as it is typed, and once at first where it came from before
 */
export function useKeptLine(
  name: string,
  begin: string,
  onText: (text: string) => void,
): [string, (text: string) => void] {
  const key = useTextKey(name);
  const [text, setText] = useState(() => {
    const kept = readKeptText(key);
    return kept?.stood === begin ? kept.text : begin;
  });
  const first = useRef({ text, begin, onText });
  useEffect(() => {
    const { text: there, begin: stood, onText: tell } = first.current;
    if (there !== stood) tell(there);
  }, []);
  const type = (next: string) => {
    setText(next);
    keepText(key, { text: next, stood: begin });
    onText(next);
  };
  return [text, type];
}
