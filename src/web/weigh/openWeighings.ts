import type { CalculationResult } from '../../calculations/define.ts';
import type { Fault } from '../../ground/fault.ts';
import { type Refused, refuse } from '../../ground/fault.ts';
import type { FirstAnswer } from '../../weighing/firstAnswer.ts';
import type { Suspicion } from '../../weighing/suspicion.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import { openWorker, WorkerEnded, type WorkerLike } from '../worker/openWorker.ts';
import type { Known, WeighingWorker } from './worker.ts';

/** The redraws behind the intervals: how many, and the number they start from, so that anyone gets the same. */
export const redraws = { draws: 500, seed: 1 } as const;

/** How far a weighing went: at once in short; with what to look at next; with every figure redrawn as well. */
const depths = ['short', 'looks', 'intervals'] as const;
export type Depth = (typeof depths)[number];

/** What is known of the weight of a piece's findings. */
export type Stand = {
  /** The case it belongs to, as JSON; empty before the first. */
  of: string;
  /** The latest weighing, or undefined before the first. */
  weighing: Weighing | undefined;
  depth: Depth;
  /** The readings, years and parts of the newest case: there before its weighing is, and once that is there out of it. */
  first: FirstAnswer | undefined;
  /** How far the longer weighing is, 0–1, or undefined when none runs. */
  progress: number | undefined;
  faults: readonly Fault[];
  /** The next looks of the last longer weighing: they stay until a new one tells its own, which it does before its redraws. */
  nextLooks: Weighing['nextLooks'];
};

/** The one weighing of the piece that lies open, for every page that asks of it. */
export type Weighings = {
  standOf(piece: string): Stand;
  /** Tells when what stands has changed; returns the way to stop listening. */
  subscribe(listener: () => void): () => void;
  /**
   * Asks for a weighing. What stands of the same case, or is under way, is not done again.
   *
   * @param piece  the id of the piece
   * @param of     its case as JSON
   */
  want(piece: string, of: string, depth: Exclude<Depth, 'short'>): void;
  /** Ends the longer weighing; what was weighed in short stays. */
  cancel(): void;
  /** What would settle whether an alteration happened in a case, as JSON; undefined where another was asked for meanwhile. */
  suspect(of: string, alteration: string): Promise<CalculationResult<Suspicion> | undefined>;
  /** Ends all that is under way, and the workers. */
  close(): void;
};

type Wanted = { piece: string; of: string };
type Longer = Wanted & { depth: Depth; rest: ReturnType<typeof setTimeout> };

const noneWanted: Wanted = { piece: '', of: '' };
const nothingYet: Stand = {
  of: '',
  weighing: undefined,
  depth: 'short',
  first: undefined,
  progress: undefined,
  faults: [],
  nextLooks: [],
};

/**
 * Opens the weighings over one state of the knowledge: what was added to it makes others.
 *
 * @param settleMs  the piece of time in which several touches are taken as one before the longer weighing begins
 */
export function openWeighings(known: Known, start: () => WorkerLike, settleMs = 350): Weighings {
  const open = () => openWorker<WeighingWorker>(start, (far) => far.know(known));
  const [shortly, longer, aside] = [open(), open(), open()];
  const heard = new Set<() => void>();
  let wanted = noneWanted;
  let stand = nothingYet;
  let weighingShortly: Promise<void> | undefined;
  let running: Longer | undefined;
  let suspected = 0;

  const tell = (change: Partial<Stand>) => {
    stand = { ...stand, ...change };
    for (const listener of heard) listener();
  };
  const cancel = () => {
    if (running === undefined) return;
    clearTimeout(running.rest);
    if (stand.progress !== undefined) longer.end();
    running = undefined;
    tell({ progress: undefined });
  };
  /** The worker drops an older case when a newer one comes: quick touches do not queue up. */
  const weighShortly = async (mine: Wanted) => {
    const input = { ...JSON.parse(mine.of), draws: 0, quick: true };
    const result = await shortly
      .call((far, hear) =>
        far.weigh(
          input,
          undefined,
          undefined,
          hear((first: FirstAnswer) => mine === wanted && tell({ first })),
        ),
      )
      .catch(brokeOff);
    if (mine === wanted && result !== undefined && stand.of !== mine.of)
      tell({ of: mine.of, depth: 'short', ...whatCame(result) });
  };
  /** The longer one waits for the short: on two cores they would only keep each other from the answer that is waited for. */
  const weighLonger = async (mine: Longer) => {
    await weighingShortly;
    if (mine !== running) return;
    tell({ progress: 0 });
    const input = { ...JSON.parse(mine.of), ...(mine.depth === 'intervals' ? redraws : { draws: 0 }) };
    const result = await longer
      .call((far, hear) =>
        far.weigh(
          input,
          hear((progress: number) => tell({ progress })),
          hear(({ nextLooks }: Pick<Weighing, 'nextLooks'>) => tell({ nextLooks })),
        ),
      )
      .catch(brokeOff);
    if (mine !== running || result === undefined) return;
    running = undefined;
    tell({
      of: mine.of,
      depth: mine.depth,
      progress: undefined,
      ...whatCame(result),
      ...(result.ok
        ? { nextLooks: result.output.nextLooks }
        : { weighing: stand.weighing, first: stand.first }),
    });
  };
  return {
    standOf: (piece) => (piece === wanted.piece ? stand : nothingYet),
    subscribe(listener) {
      heard.add(listener);
      return () => heard.delete(listener);
    },
    want(piece, of, depth) {
      if (piece !== wanted.piece) {
        cancel();
        stand = nothingYet;
      }
      if (piece !== wanted.piece || of !== wanted.of) {
        wanted = { piece, of };
        if (stand.of === of) tell({ first: stand.weighing });
        else weighingShortly = weighShortly(wanted);
      }
      if (running !== undefined && running.of === of && goesTo(running, depth)) return;
      cancel();
      if (stand.of === of && goesTo(stand, depth)) return;
      const mine: Longer = { ...wanted, depth, rest: setTimeout(() => void weighLonger(mine), settleMs) };
      running = mine;
    },
    cancel,
    async suspect(of, alteration) {
      if (suspected > 0) aside.end();
      suspected += 1;
      try {
        return await aside.call((far) => far.suspect(JSON.parse(of), alteration)).catch(brokeOff);
      } finally {
        suspected -= 1;
      }
    },
    close() {
      cancel();
      wanted = noneWanted;
      shortly.end();
      longer.end();
      aside.end();
    },
  };
}

/** Whether it goes as far as is asked, or further. */
export function goesTo(one: { depth: Depth }, asked: Depth): boolean {
  return depths.indexOf(one.depth) >= depths.indexOf(asked);
}

function whatCame(result: CalculationResult<Weighing>): Pick<Stand, 'weighing' | 'first' | 'faults'> {
  return result.ok
    ? { weighing: result.output, first: result.output, faults: [] }
    : { weighing: undefined, first: undefined, faults: result.faults };
}

/** The sentence for a worker that broke; nothing where the page itself ended it. */
function brokeOff(why: Error): Refused | undefined {
  if (why instanceof WorkerEnded) return undefined;
  const because = why.message === '' ? '' : ` (${why.message})`;
  const message = `The findings could not be weighed in this browser${because}. Load the page anew; nothing that was recorded is lost.`;
  return refuse('weigh.broke-off', message);
}
