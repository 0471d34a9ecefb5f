import type { Change, EventKind } from './event.ts';

/** The acts that stand, oldest first, and those taken back, the last taken back at the end. */
export type UndoStacks<One> = { done: One[]; undone: One[] };

/** Adds an act that stands. It ends what could be redone; an opening or a signature also ends what could be undone. */
export function addDone<One>(
  stacks: UndoStacks<One>,
  act: One,
  event: { kind: EventKind; changes: readonly Change[] },
): void {
  stacks.undone.length = 0;
  if (event.kind === 'piece-opened' || isSignature(event)) stacks.done.length = 0;
  else stacks.done.push(act);
}

/**
 * Takes the last act back, or brings the last taken back again.
 *
 * @param isMeant  whether the act on top is the one that was meant; left out, any is
 * @returns the act that was moved, or undefined where there is none or another was meant
 */
export function moveDone<One>(
  { done, undone }: UndoStacks<One>,
  step: 'undo' | 'redo',
  isMeant: (act: One) => boolean = () => true,
): One | undefined {
  const [from, to] = step === 'undo' ? [done, undone] : [undone, done];
  const top = from.at(-1);
  if (top === undefined || !isMeant(top)) return undefined;
  from.pop();
  to.push(top);
  return top;
}

/** Whether an act signs the opinion, as it is signed now or as it was before revisions were kept. */
export function isSignature({ kind, changes }: { kind: EventKind; changes: readonly Change[] }): boolean {
  return (
    kind === 'opinion-issued' ||
    (kind === 'opinion-signed' &&
      changes.some(({ path, to }) => path.join('.') === 'opinion.status' && to === 'signed'))
  );
}
