import { useState } from 'react';
import { z } from 'zod';
import { type BoardMark, markKinds } from '../../board/boardMark.ts';
import { type Marks, useMarks } from '../../board/useMarks.ts';
import { useDraft } from '../../drawer/useDraft.ts';

const shape = z.array(
  z.object({
    id: z.string(),
    name: z.string(),
    kind: z.enum(markKinds),
    points: z.array(z.tuple([z.number(), z.number()])).readonly(),
  }),
);

/** The marks of one picture at one tool: kept on this device as they are set, each change to be undone. */
export function useBenchMarks(name: string): Marks {
  const [kept, keep] = useDraft(name, shape, () => []);
  const list = kept as unknown as readonly BoardMark[];
  const [before, setBefore] = useState<(readonly BoardMark[])[]>([]);
  const put = (next: readonly BoardMark[]) => {
    setBefore((past) => [...past.slice(-99), list]);
    keep(next as never);
  };
  const undo = () => {
    keep((before.at(-1) ?? list) as never);
    setBefore((past) => past.slice(0, -1));
  };
  return useMarks({
    list,
    stand: (mark) => put([...list.filter(({ id }) => id !== mark.id), mark]),
    change: (id, points) => put(list.map((each) => (each.id === id ? { ...each, points } : each))),
    take: (id) => put(list.filter((each) => each.id !== id)),
    undo: before.length > 0 ? undo : undefined,
  });
}
