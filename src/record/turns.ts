/** Runs a piece of work when its turn comes. */
export type InTurn = <Value>(
  work: () => Promise<Value>,
  /** Told how many pieces of work are before it, each time that changes, while it waits. */
  onAhead?: (ahead: number) => void,
) => Promise<Value>;

/** Lets at most `atOnce` pieces of work run together; the others wait their turn, first come first. */
export function takingTurns(atOnce: number): InTurn {
  const waiting: { go: () => void; onAhead: ((ahead: number) => void) | undefined }[] = [];
  const state = { running: 0 };
  const tellAll = () => {
    for (const [place, { onAhead }] of waiting.entries()) onAhead?.(place + state.running);
  };
  return async (work, onAhead) => {
    if (state.running >= atOnce)
      await new Promise<void>((go) => {
        waiting.push({ go, onAhead });
        onAhead?.(waiting.length - 1 + state.running);
      });
    else state.running++;
    try {
      return await work();
    } finally {
      const next = waiting.shift();
      if (next) next.go();
      else state.running--;
      tellAll();
    }
  };
}
