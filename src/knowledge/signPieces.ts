/** The pieces a sign's drawing may be put together from, each with what its numbers mean, in the sheet's units. */
export const signPieces = {
  board: ['x', 'y', 'width', 'height'],
  upright: ['x', 'y', 'width', 'height'],
  'end-grain': ['x', 'y', 'width', 'height'],
  plain: ['x', 'y', 'width', 'height'],
  round: ['x', 'y', 'radius'],
  oval: ['x', 'y', 'across', 'down'],
  hole: ['x', 'y', 'radius'],
  holes: ['from x', 'from y', 'to x', 'to y', 'count', 'radius'],
  specks: ['x', 'y', 'width', 'height', 'count', 'radius'],
  rings: ['x', 'y', 'radius', 'count'],
  'straight-lines': ['x', 'y', 'width', 'height', 'gap'],
  'uneven-lines': ['x', 'y', 'width', 'height', 'gap'],
  arcs: ['x', 'y', 'width', 'height', 'radius', 'gap'],
  scratches: ['x', 'y', 'width', 'height', 'count'],
  facets: ['x', 'y', 'width', 'height', 'columns', 'rows'],
  crackle: ['x', 'y', 'width', 'height', 'columns', 'rows'],
  plies: ['x', 'y', 'width', 'height', 'count'],
  pins: ['x', 'y', 'height', 'count', 'depth', 'narrow', 'wide'],
  'screw-head': ['x', 'y', 'radius'],
  'cross-head': ['x', 'y', 'radius'],
  bail: ['x', 'y', 'width'],
  plate: ['x', 'y', 'width'],
  keyhole: ['x', 'y', 'height'],
  hinge: ['x', 'y', 'width', 'height'],
  drawers: ['x', 'y', 'width', 'height', 'count'],
  leg: ['x', 'y', 'height', 'top width', 'foot width'],
  turning: ['x', 'y', 'height', 'radius'],
  caster: ['x', 'y', 'radius'],
  screw: ['x', 'y', 'length', 'head'],
  nail: ['x', 'y', 'length', 'head', 'shank', 'end'],
  coil: ['x', 'y', 'width', 'height', 'turns'],
  leaf: ['x', 'y', 'width', 'height'],
  shell: ['x', 'y', 'radius', 'ribs'],
  dial: ['x', 'y', 'radius'],
  lens: ['x', 'y', 'radius'],
  chair: ['x', 'y', 'width', 'height'],
  'side-chair': ['x', 'y', 'width', 'height', 'rake'],
  table: ['x', 'y', 'width', 'height'],
  foot: ['x', 'y', 'width', 'height'],
} as const satisfies Record<string, readonly string[]>;

export type SignPieceName = keyof typeof signPieces;

/** A piece called for: its name, the face it has instead of its usual one, and its numbers. */
export type SignPiece = { name: SignPieceName; face: string | undefined; at: number[] };

/** The faces a piece may be given in place of its usual one. */
export const pieceFaces = ['wood', 'end', 'pale', 'dark', 'gap', 'metal', 'dirt', 'worn'] as const;

/**
 * Reads a piece from its line, as "board dark 6 8 40 20".
 *
 * @returns what is wrong, in words, where the line is no piece
 */
export function readSignPiece(line: string): SignPiece | { wrong: string } {
  const [name = '', ...rest] = line.trim().split(/\s+/);
  if (!Object.hasOwn(signPieces, name))
    return { wrong: `there is no piece "${name}"; the pieces are ${Object.keys(signPieces).join(', ')}` };
  const hasFace = (pieceFaces as readonly string[]).includes(rest[0] ?? '');
  const at = (hasFace ? rest.slice(1) : rest).map(Number);
  const takes: readonly string[] = signPieces[name as SignPieceName];
  if (at.length !== takes.length || at.some((each) => !Number.isFinite(each)))
    return { wrong: `"${name}" takes ${takes.length} numbers: ${takes.join(', ')}` };
  return { name: name as SignPieceName, face: hasFace ? rest[0] : undefined, at };
}
