import type { CalculationResult } from '../../calculations/define.ts';
import type { CaseToWeigh } from '../../evidence/caseToWeigh.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import type { EarlyLooks } from '../../weighing/weighCase.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import type { FromWeigher, ToWeigher } from './messages.ts';

/** What of a worker is used here; a test hands in one of its own. */
export type WorkerLike = {
  postMessage: (message: ToWeigher) => void;
  terminate: () => void;
  onmessage: ((event: { data: FromWeigher }) => void) | null;
  onerror: ((event: { message?: string }) => void) | null;
};

type Known = { knowledge: Knowledge; yearNow: number };
type Told = {
  progress: (share: number) => void;
  /** The next looks, which are known before the redraws. */
  early?: (looks: EarlyLooks) => void;
  result: (result: CalculationResult<Weighing>) => void;
};

/** One desk at which cases are weighed, one at a time: a new case takes the place of the one before. */
export type Weigher = { weigh: (caseToWeigh: CaseToWeigh, told: Told) => void; stop: () => void };

/**
 * Opens a desk where cases are weighed one at a time. While one is weighed only the newest that came since waits: those
 * between are never begun, so that quick touches do not queue up.
 *
 * @param open   makes a fresh worker
 * @param fresh  true to break off the case before by ending its worker: for long cases that cannot hear a call
 */
export function openWeigher(open: () => WorkerLike, known: Known, fresh: boolean): Weigher {
  let ask = 0;
  let worker: WorkerLike | undefined;
  let waits: (() => void) | undefined;
  let busy = false;
  const stop = () => {
    ask += 1;
    worker?.terminate();
    worker = undefined;
    waits = undefined;
    busy = false;
  };
  const done = () => {
    busy = false;
    const next = waits;
    waits = undefined;
    next?.();
  };
  const weigh = (caseToWeigh: CaseToWeigh, told: Told) => {
    if (fresh) stop();
    if (busy) {
      waits = () => weigh(caseToWeigh, told);
      return;
    }
    busy = true;
    ask += 1;
    const mine = ask;
    worker ??= startWorker(open, known);
    worker.onmessage = ({ data }) => {
      if (data.ask !== mine || mine !== ask) return;
      if (data.say === 'progress') return told.progress(data.share);
      if (data.say === 'early') return told.early?.(data.looks);
      if (waits === undefined) told.result(data.result);
      done();
    };
    worker.onerror = (event) => {
      if (mine !== ask) return;
      told.result(brokeOff(event.message));
      stop();
    };
    worker.postMessage({ say: 'weigh', ask, caseToWeigh });
  };
  return { weigh, stop };
}

function startWorker(open: () => WorkerLike, known: Known): WorkerLike {
  const worker = open();
  worker.postMessage({ say: 'know', ...known });
  return worker;
}

function brokeOff(why: string | undefined): CalculationResult<Weighing> {
  const message = `The findings could not be weighed in this browser${why === undefined ? '' : ` (${why})`}. Load the page anew; nothing that was recorded is lost.`;
  return { ok: false, faults: [{ code: 'weigh.broke-off', path: '', message }] };
}
