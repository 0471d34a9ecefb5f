import { useEffect } from 'react';

/** Ctrl or Cmd with Z takes the last act back, with Shift brings it back; typing keeps its own undo. */
export function useUndoKeys(undo: () => void, redo: () => void): void {
  useEffect(() => {
    const listen = (press: KeyboardEvent) => {
      if (!(press.ctrlKey || press.metaKey) || press.altKey || press.key.toLowerCase() !== 'z') return;
      if (isTyping(press.target)) return;
      press.preventDefault();
      if (press.shiftKey) redo();
      else undo();
    };
    addEventListener('keydown', listen);
    return () => removeEventListener('keydown', listen);
  }, [undo, redo]);
}

function isTyping(target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement) return !target.readOnly;
  if (target instanceof HTMLInputElement)
    return !['radio', 'checkbox', 'button', 'file'].includes(target.type);
  return target instanceof HTMLElement && target.isContentEditable;
}
