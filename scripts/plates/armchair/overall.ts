import { lit, sweep } from '../chairs/studio.ts';
import type { Scene } from '../render/scene.ts';
import { armchair } from './plan.ts';

/** The whole chair, seen a little from its left and from above. */
export function overall(): Scene {
  return lit([...sweep(1500, 1500), ...armchair()], [1150, 980, 2650], [36, 470, -200], {
    fieldDeg: 21.6,
    nearnessMm: 60,
  });
}
