/** Lets at most `atOnce` pieces of work run together; the others wait their turn. */
export function takingTurns(atOnce: number): <Value>(work: () => Promise<Value>) => Promise<Value> {
  const waiting: (() => void)[] = [];
  let running = 0;
  return async (work) => {
    if (running >= atOnce) await new Promise<void>((resolve) => waiting.push(resolve));
    else running++;
    try {
      return await work();
    } finally {
      const next = waiting.shift();
      if (next) next();
      else running--;
    }
  };
}
