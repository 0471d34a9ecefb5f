import { near } from '../chairs/studio.ts';
import type { Face, Scene } from '../render/scene.ts';
import { box } from '../solids/extrude.ts';
import { lathe } from '../solids/lathe.ts';
import { shift, turn } from '../solids/turn.ts';
import { chance } from '../woods/noise.ts';
import { plain } from '../woods/wood.ts';
import { cherry } from './plan.ts';

/** A riven peg: an uneven eight-sided pin, its end worn round, standing a little out of the post. */
function peg(y: number, z: number, seed: number): Face[] {
  const look = cherry({ along: 'y', board: 70 + seed, tone: [0.72, 0.6, 0.5], gloss: 0.3 });
  const uneven = (share: number) => 1 + 0.13 * chance(Math.round(share * 9), seed, 0, 5);
  const pin = lathe(
    [
      [4.4, -3],
      [4.4, 0.75],
      [4, 1.15],
      [2.6, 1.4],
      [0, 1.5],
    ],
    look,
    9,
    uneven,
  );
  const hole = lathe(
    [
      [4.9, -1],
      [4.9, 0.03],
      [0, 0.03],
    ],
    plain([0.02, 0.012, 0.008]),
    9,
    uneven,
  );
  return shift(turn([...hole, ...pin], 'z', -90), [0, y, z]);
}

/** Laid out for the left and printed mirrored: the right rear post from outside, where the side rail comes in: two pegs stand above the surface. */
export function pegs(): Scene {
  const post = cherry({ along: 'y', board: 22, heart: [-70, 40], tone: [0.82, 0.74, 0.7] });
  const rail = cherry({ along: 'z', board: 34, heart: [-90, -60], tone: [0.88, 0.8, 0.75] });
  return near(
    [
      ...box([-36, -260, -38], [0, 260, 0], post),
      ...box([-26, -34, 0.35], [-2.2, 34, 420], rail),
      ...box([-24, -33, -1], [-4, 33, 0.35], plain([0.015, 0.01, 0.008])),
      ...peg(17, -13, 1),
      ...peg(-16, -15, 2),
    ],
    [212, 58, 62],
    [0, 2, 8],
    { fieldDeg: 22, lamp: [0.26, 0.8, -0.5], lampStrength: 2.1, roomStrength: 0.42, nearnessMm: 5 },
  );
}
