import type { Surface } from './surface.ts';

/** A face whose wear goes against its use. */
export type Contrary = {
  part: string;
  face: string;
  what: 'worn where nothing touches' | 'sharp where much touches';
};

/** What counts as hardly touched, much touched, worn and sharp, on scales of 0 to 1: judgements. */
const bounds = { hardly: 0.05, much: 0.6, worn: 0.5, sharp: 0.1 } as const;

/**
 * The faces that are worn where nothing touches them, and those that are sharp where much does.
 *
 * Method: a face is named where a quarter of its places are so: hardly touched (below 0.05 of the most touched place) and yet worn (0.5 or more), or
 * where all places that are much touched (0.6 or more), four or more, are sharp (0.1 or less).
 *
 * @param worn  [face][place], 0–1
 */
export function contraryPlaces(surface: Surface, worn: readonly (readonly number[])[]): Contrary[] {
  return surface.faces.flatMap((face, row): Contrary[] => {
    const touched = surface.grid[row] as number[];
    const here = worn[row] as readonly number[];
    const idle = touched.filter((each, at) => each < bounds.hardly && (here[at] as number) >= bounds.worn);
    const busy = touched.flatMap((each, at) => (each >= bounds.much ? [here[at] as number] : []));
    return [
      ...(idle.length >= touched.length / 4
        ? [{ part: surface.part, face, what: 'worn where nothing touches' } as const]
        : []),
      ...(busy.length >= 4 && busy.every((each) => each <= bounds.sharp)
        ? [{ part: surface.part, face, what: 'sharp where much touches' } as const]
        : []),
    ];
  });
}
