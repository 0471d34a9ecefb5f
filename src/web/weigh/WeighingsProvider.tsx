import { createContext, type ReactNode, useEffect, useMemo } from 'react';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { openWeighings, type Weighings } from './openWeighings.ts';

export const WeighingsHere = createContext<Weighings | undefined>(undefined);

/** Holds the weighing of the piece that lies open for all pages inside; knowledge that was added to begins another. */
export function WeighingsProvider({ children }: { children: ReactNode }) {
  const knowledge = useKnowledge();
  const weighings = useMemo(
    () => openWeighings({ knowledge, yearNow: new Date().getFullYear() }, startWorker),
    [knowledge],
  );
  useEffect(() => weighings.close, [weighings]);
  return <WeighingsHere value={weighings}>{children}</WeighingsHere>;
}

function startWorker(): Worker {
  return new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
}
