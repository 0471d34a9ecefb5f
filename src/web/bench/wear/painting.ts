/** What the examiner sees at a place: an edge still sharp, no wear, light wear or heavy wear. */
export type Stroke = 'sharp' | 'none' | 'light' | 'heavy';

/** [face][stretch along]: what was painted; null where nothing was. */
export type PaintedRows = (Stroke | null)[][];

/** Painted surfaces by their key. */
export type Painting = Record<string, PaintedRows>;

/** Strokes in the order in which a key turns them, with their names. */
export const strokes: readonly { id: Stroke; name: string; sign: string; note: string }[] = [
  { id: 'none', name: 'No wear', sign: '·', note: 'Looked at; nothing to see.' },
  { id: 'light', name: 'Light wear', sign: '/', note: 'Finish thin, edge eased.' },
  { id: 'heavy', name: 'Heavy wear', sign: '■', note: 'Hollowed, flattened or bare.' },
  { id: 'sharp', name: 'Sharp here', sign: '◇', note: 'As crisp as from the tool.' },
];

/** A surface is painted in so many stretches; the calculation takes each as two places. */
export const stretches = 12;

type SurfaceId = { part: string; surface: number; faces: readonly string[] };

/** The key of a surface in a painting. */
export function surfaceKey({ part, surface }: Pick<SurfaceId, 'part' | 'surface'>): string {
  return `${part} ${surface}`;
}

/** A surface on which nothing is painted. */
export function unpainted({ faces }: Pick<SurfaceId, 'faces'>): PaintedRows {
  return faces.map(() => Array.from({ length: stretches }, () => null));
}

/** A painting with one place painted. */
export function painted(rows: PaintedRows, face: number, at: number, stroke: Stroke | null): PaintedRows {
  return rows.map((row, index) =>
    index === face ? row.map((each, place) => (place === at ? stroke : each)) : row,
  );
}

/** A painting with a whole face painted alike. */
export function paintedFace(rows: PaintedRows, face: number, stroke: Stroke | null): PaintedRows {
  return rows.map((row, index) => (index === face ? row.map(() => stroke) : row));
}

/** The next stroke when a place is turned on by a key. */
export function nextStroke(stroke: Stroke | null): Stroke | null {
  const at = strokes.findIndex(({ id }) => id === stroke);
  return strokes[at + 1]?.id ?? null;
}

/** Faces on which nothing was painted yet. */
export function facesLeft({ faces }: Pick<SurfaceId, 'faces'>, rows: PaintedRows): string[] {
  return faces.filter((_, face) => rows[face]?.every((each) => each === null) ?? true);
}

/**
 * The painted wear as `wear.contact` asks for it: only surfaces of which every face was looked at.
 *
 * Method: sharp 0, no wear 0.2, light 0.5, heavy 1, so that no wear and a sharp edge are told apart; what was left bare on a face that
 * was looked at is no wear. Where nothing is worn at all, no wear is 0 as well.
 */
export function wornOf(
  painting: Painting,
  surfaces: readonly SurfaceId[],
): { part: string; surface: number; grid: number[][] }[] {
  const whole = surfaces.flatMap((surface) => {
    const rows = painting[surfaceKey(surface)];
    return rows === undefined || rows.length !== surface.faces.length || facesLeft(surface, rows).length > 0
      ? []
      : [{ part: surface.part, surface: surface.surface, rows }];
  });
  const isWorn = whole.some(({ rows }) => rows.flat().some((each) => each === 'light' || each === 'heavy'));
  const depth = { sharp: 0, none: isWorn ? 0.2 : 0, light: 0.5, heavy: 1 };
  return whole.map(({ rows, ...surface }) => ({
    ...surface,
    grid: rows.map((row) => row.flatMap((each) => [depth[each ?? 'none'], depth[each ?? 'none']])),
  }));
}
