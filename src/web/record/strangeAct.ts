import type { ActMark } from './act.ts';
import type { OpenPiece } from './deskState.ts';
import type { Identity } from './identity.ts';

/**
 * Whether the act that an undo or redo would turn is another hand's: another device's, or one that came in while this page
 * was open. Having been asked about it once, a person may turn it.
 *
 * @param mine  ids of the acts made on this page
 */
export function isStrange(
  opened: OpenPiece,
  mark: ActMark,
  self: Identity,
  mine: ReadonlySet<string>,
): boolean {
  if (opened.asked === mark.id || mine.has(mark.id)) return false;
  return mark.device !== self.device || opened.isMovedOn;
}

/** What is said before another hand's act is taken back or brought back. */
export function strangeWords(type: 'undo' | 'redo', { who, device, at }: ActMark): string {
  const by = who === '' ? `on ${device}` : `by ${who} on ${device}`;
  const button = type === 'undo' ? 'Undo' : 'Redo';
  const done = type === 'undo' ? 'take it back' : 'bring it back';
  return `Nothing was changed yet: the last act was made ${by}, at ${at.slice(11, 16)} on ${at.slice(0, 10)}, not here. Press ${button} once more to ${done} all the same.`;
}
