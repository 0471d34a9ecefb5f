import { useState } from 'react';
import { type BoardMark, isFull, type Wanted } from './boardMark.ts';

/** Where the marks of a picture are kept: each place that lays the board out has its own. */
export type MarkShelf = {
  list: readonly BoardMark[];
  /** Takes a mark in, in place of one of the same id. */
  stand(mark: BoardMark): void;
  change(id: string, points: BoardMark['points']): void;
  take(id: string): void;
  /** Takes the last change back; left out where there is none, or the page does it. */
  undo?: (() => void) | undefined;
};

/** The marks on the board: those that stand, the one being set, the one that is chosen. */
export type Marks = Omit<MarkShelf, 'stand'> & {
  /** The mark being set, with the points it has so far, and how many each touch brought. */
  placing: (Wanted & { points: BoardMark['points']; touches: readonly number[] }) | undefined;
  chosen: string | undefined;
  of(id: string): BoardMark['points'] | undefined;
  begin(wanted: Wanted | undefined): void;
  /** Sets one or several points of the mark being set; one that is complete then stands. */
  set(points: BoardMark['points']): void;
  close(): void;
  choose(id: string | undefined): void;
};

/** What is being done with the marks of a shelf. Undo takes the last touch of the mark being set back, or the shelf's last change. */
export function useMarks(shelf: MarkShelf): Marks {
  const [placing, setPlacing] = useState<Marks['placing']>(undefined);
  const [chosen, choose] = useState<string | undefined>(undefined);
  const stand = ({ touches: _, least: __, ...mark }: NonNullable<Marks['placing']>) => {
    shelf.stand(mark);
    setPlacing(undefined);
    choose(mark.id);
  };
  const takeBack = () =>
    setPlacing(
      (now) =>
        now && {
          ...now,
          points: now.points.slice(0, -(now.touches.at(-1) ?? 1)),
          touches: now.touches.slice(0, -1),
        },
    );
  return {
    ...shelf,
    placing,
    chosen,
    of: (id) => shelf.list.find((each) => each.id === id)?.points,
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
    take(id) {
      shelf.take(id);
      choose(undefined);
    },
    undo: (placing?.points.length ?? 0) > 0 ? takeBack : shelf.undo,
  };
}
