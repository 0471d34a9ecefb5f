import { chair } from '../chairs/chair.ts';
import { lit, sweep } from '../chairs/studio.ts';
import type { Scene } from '../render/scene.ts';
import { sideChair } from './plan.ts';

/** The whole chair, seen a little from its right and from above. */
export function overall(): Scene {
  return lit([...sweep(1500, 1500), ...chair(sideChair)], [-1050, 1010, 2650], [10, 452, -190], {
    fieldDeg: 21.2,
    nearnessMm: 60,
  });
}
