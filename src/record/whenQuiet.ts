/** Does something once nothing has been told for a while; never keeps the program running for it. */
export function whenQuiet(waitMs: number, act: () => void): { told: () => void; end: () => void } {
  let timer: NodeJS.Timeout | undefined;
  const end = () => clearTimeout(timer);
  return {
    told() {
      end();
      timer = setTimeout(act, waitMs);
      timer.unref();
    },
    end,
  };
}
