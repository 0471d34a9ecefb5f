/** What one touch took, in milliseconds: in the worker until the first answer and until all; in the page from the touch on. */
export type Touch = { first: number; whole: number; came: number; drawn: number };

/** Runs in the page before its own code: keeps `touchTimes`, one for each quick weighing. */
export function keepTimes(): void {
  const times: Touch[] = [];
  Object.assign(window, { touchTimes: times });
  let touched = 0;
  let [came, drawn] = [Number.NaN, Number.NaN];
  addEventListener(
    'click',
    () => {
      touched = performance.now();
      [came, drawn] = [Number.NaN, Number.NaN];
    },
    true,
  );
  // The first answer comes by the port through which the worker calls back.
  const listen = MessagePort.prototype.addEventListener;
  MessagePort.prototype.addEventListener = function (this: MessagePort, kind: string, listener: never) {
    if (kind === 'message')
      listen.call(this, kind, () => {
        if (!Number.isNaN(came)) return;
        came = performance.now() - touched;
        requestAnimationFrame(() =>
          setTimeout(() => {
            drawn = performance.now() - touched;
          }),
        );
      });
    listen.call(this, kind, listener);
  };
  new BroadcastChannel('touch-times').onmessage = ({ data }) => {
    // What is drawn last may still be waiting for its frame.
    setTimeout(() => times.push({ ...data, came, drawn }), 40);
  };
}

/** Runs in the worker before its own code: tells what every quick weighing took. */
export function tellTimes(): void {
  const told = new BroadcastChannel('touch-times');
  let from = Number.NaN;
  let first = Number.NaN;
  addEventListener('message', ({ data }) => {
    if (data?.path?.[0] !== 'weigh' || data.argumentList?.[0]?.value?.quick !== true) return;
    from = performance.now();
    first = Number.NaN;
  });
  const callBack = MessagePort.prototype.postMessage;
  MessagePort.prototype.postMessage = function (this: MessagePort, ...said: [never]) {
    // Ports also serve the worker to take up what came meanwhile; what is told to the page is a call.
    if (Number.isNaN(first) && (said[0] as { type?: string } | undefined)?.type === 'APPLY')
      first = performance.now() - from;
    callBack.apply(this, said);
  };
  const answer = self.postMessage.bind(self) as (...said: unknown[]) => void;
  Object.assign(self, {
    postMessage: (...said: unknown[]) => {
      answer(...said);
      if (!Number.isNaN(from)) told.postMessage({ first, whole: performance.now() - from });
      from = Number.NaN;
    },
  });
}
