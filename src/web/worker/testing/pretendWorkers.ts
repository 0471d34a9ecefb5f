import { expose } from 'comlink';
import type { WorkerLike } from '../openWorker.ts';

/** Workers that are none: functions of a test at the other end of a message channel, each fresh one counted. */
export function pretendWorkers<Api extends object>(api: (index: number) => Api) {
  const started: { ended: boolean; break(why: string): void }[] = [];
  const start = (): WorkerLike => {
    const { port1, port2 } = new MessageChannel();
    expose(api(started.length), port2);
    const one = {
      ended: false,
      break: (why: string) => port1.dispatchEvent(Object.assign(new Event('error'), { message: why })),
    };
    started.push(one);
    return Object.assign(port1, {
      terminate() {
        one.ended = true;
        port1.close();
      },
    });
  };
  return { started, start };
}

/** Resolves once whatever is on its way between the two ends has come. */
export function settled(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 20));
}
