import type { SignDrawing, Stroke, StrokeKind } from '../knowledge/signDrawingSchema.ts';
import { readSignPiece, type SignPieceName } from '../knowledge/signPieces.ts';
import { board, box, ellipse, endGrain, plies, rings, upright } from './pieces/faces.ts';
import { coil, nail, screw } from './pieces/fasteners.ts';
import { bail, caster, crossHead, hinge, keyhole, pins, plate, screwHead } from './pieces/fittings.ts';
import { chair, foot, sideChair, table } from './pieces/furniture.ts';
import {
  arcs,
  crackle,
  facets,
  holes,
  scratches,
  specks,
  straightLines,
  unevenLines,
} from './pieces/marks.ts';
import { dial, leaf, lens, shell } from './pieces/ornaments.ts';
import { drawers, leg, turning } from './pieces/wholes.ts';

/** Every stroke of a sign's drawing in the order it is laid down, the pieces of the common stock drawn out. */
export function signStrokes({ strokes }: Pick<SignDrawing, 'strokes'>): Stroke[] {
  return strokes
    .flatMap((each) => (typeof each === 'string' ? drawPiece(each) : [each]))
    .filter(({ d }) => d !== '');
}

function drawPiece(line: string): Stroke[] {
  const piece = readSignPiece(line);
  // A line that is no piece never comes this far: the knowledge check names it.
  if ('wrong' in piece) return [];
  const { usual, draw } = drawn[piece.name];
  return draw((piece.face as StrokeKind | undefined) ?? usual, piece.at);
}

type Draw = (face: StrokeKind, at: readonly number[]) => Stroke[];
type Four = [number, number, number, number];
type Three = [number, number, number];

const drawn: Record<SignPieceName, { usual: StrokeKind; draw: Draw }> = {
  board: { usual: 'wood', draw: (face, at) => board(face, ...(at as Four)) },
  upright: { usual: 'wood', draw: (face, at) => upright(face, ...(at as Four)) },
  'end-grain': { usual: 'end', draw: (face, at) => endGrain(face, ...(at as Four)) },
  plain: { usual: 'wood', draw: (as, at) => [{ as, d: box(...(at as Four)) }] },
  round: { usual: 'end', draw: (as, at) => [{ as, d: ellipse(...(at as Three)) }] },
  oval: { usual: 'end', draw: (as, at) => [{ as, d: ellipse(...(at as Four)) }] },
  hole: { usual: 'gap', draw: (as, at) => [{ as, d: ellipse(...(at as Three)) }] },
  holes: { usual: 'gap', draw: holes },
  specks: { usual: 'gap', draw: specks },
  rings: { usual: 'thin', draw: (_, at) => rings(...(at as Four)) },
  'straight-lines': { usual: 'thin', draw: (_, at) => straightLines(at) },
  'uneven-lines': { usual: 'thin', draw: (_, at) => unevenLines(at) },
  arcs: { usual: 'thin', draw: (_, at) => arcs(at) },
  scratches: { usual: 'thin', draw: (_, at) => scratches(at) },
  facets: { usual: 'thin', draw: (_, at) => facets(at) },
  crackle: { usual: 'thin', draw: (_, at) => crackle(at) },
  plies: { usual: 'wood', draw: (_, at) => plies(...(at as [...Four, number])) },
  pins: { usual: 'end', draw: (_, at) => pins(at) },
  'screw-head': { usual: 'metal', draw: (_, at) => screwHead(...(at as Three)) },
  'cross-head': { usual: 'metal', draw: (_, at) => crossHead(...(at as Three)) },
  bail: { usual: 'metal', draw: (_, at) => bail(...(at as Three)) },
  plate: { usual: 'metal', draw: (face, at) => plate(face, ...(at as Three)) },
  keyhole: { usual: 'gap', draw: (_, at) => keyhole(...(at as Three)) },
  hinge: { usual: 'metal', draw: (face, at) => hinge(face, ...(at as Four)) },
  drawers: { usual: 'wood', draw: drawers },
  leg: { usual: 'wood', draw: leg },
  turning: { usual: 'wood', draw: turning },
  caster: { usual: 'metal', draw: (face, at) => caster(face, ...(at as Three)) },
  screw: { usual: 'metal', draw: screw },
  nail: { usual: 'metal', draw: nail },
  coil: { usual: 'line', draw: (_, at) => coil(at) },
  leaf: { usual: 'wood', draw: leaf },
  shell: { usual: 'wood', draw: shell },
  dial: { usual: 'pale', draw: dial },
  lens: { usual: 'mark', draw: (_, at) => lens(at) },
  chair: { usual: 'wood', draw: chair },
  'side-chair': { usual: 'wood', draw: sideChair },
  table: { usual: 'wood', draw: table },
  foot: { usual: 'wood', draw: foot },
};
