import { useState } from 'react';
import { z } from 'zod';
import { useDraft } from '../bench/sets/useDraft.ts';
import { type BoardMark, isFull, type Wanted } from './boardMark.ts';

const shape = z.array(
  z.object({
    id: z.string(),
    name: z.string(),
    kind: z.enum(['line', 'angle', 'region', 'corners', 'points', 'outline']),
    points: z.array(z.tuple([z.number(), z.number()])).readonly(),
  }),
);

/** The marks of one picture at one tool: kept on this device as they are set, each change to be undone. */
export type Marks = {
  list: readonly BoardMark[];
  /** The mark being set, with the points it has so far, and how many each touch brought. */
  placing: (Wanted & { points: BoardMark['points']; touches: readonly number[] }) | undefined;
  chosen: string | undefined;
  of(id: string): BoardMark['points'] | undefined;
  begin(wanted: Wanted | undefined): void;
  /** Sets one or several points of the mark being set; one that is complete then stands. */
  set(points: BoardMark['points']): void;
  close(): void;
  choose(id: string | undefined): void;
  change(id: string, points: BoardMark['points']): void;
  take(id: string): void;
  /** Takes the last touch of the mark being set back, or the last change. */
  undo: (() => void) | undefined;
};

export function useMarks(name: string): Marks {
  const [kept, keep] = useDraft(name, shape, () => []);
  const list = kept as unknown as readonly BoardMark[];
  const [before, setBefore] = useState<(readonly BoardMark[])[]>([]);
  const [placing, setPlacing] = useState<Marks['placing']>(undefined);
  const [chosen, choose] = useState<string | undefined>(undefined);
  const put = (next: readonly BoardMark[]) => {
    setBefore((past) => [...past.slice(-99), list]);
    keep(next as never);
  };
  const stand = ({ id, name: called, kind, points }: NonNullable<Marks['placing']>) => {
    put([...list.filter((each) => each.id !== id), { id, name: called, kind, points }]);
    setPlacing(undefined);
    choose(id);
  };
  const undo = () => {
    if (placing !== undefined && placing.points.length > 0)
      setPlacing({
        ...placing,
        points: placing.points.slice(0, -(placing.touches.at(-1) ?? 1)),
        touches: placing.touches.slice(0, -1),
      });
    else {
      keep((before.at(-1) ?? list) as never);
      setBefore((past) => past.slice(0, -1));
    }
  };
  return {
    list,
    placing,
    chosen,
    of: (id) => list.find((each) => each.id === id)?.points,
    begin(wanted) {
      choose(undefined);
      setPlacing(wanted === undefined ? undefined : { ...wanted, points: [], touches: [] });
    },
    set(points) {
      if (placing === undefined) return;
      const more = (now: NonNullable<Marks['placing']>) => ({
        ...now,
        points: [...now.points, ...points],
        touches: [...now.touches, points.length],
      });
      const next = more(placing);
      if (isFull(next)) stand(next);
      else setPlacing((now) => now && more(now));
    },
    close: () => placing !== undefined && stand(placing),
    choose,
    change: (id, points) => put(list.map((each) => (each.id === id ? { ...each, points } : each))),
    take(id) {
      put(list.filter((each) => each.id !== id));
      choose(undefined);
    },
    undo: before.length > 0 || (placing?.points.length ?? 0) > 0 ? undo : undefined,
  };
}
