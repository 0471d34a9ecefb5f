import { near } from '../chairs/studio.ts';
import type { Scene } from '../render/scene.ts';
import { box } from '../solids/extrude.ts';
import { noise } from '../woods/noise.ts';
import { mahogany } from './plan.ts';

/** Ripple of a planing machine along x, twelve to the inch, and the raised line of a nick in its knife. */
function ripple(x: number, y: number, z: number): number {
  if (z < -0.4) return 0;
  const at = x / 2.117;
  const wave = 0.062 * Math.cos(2 * Math.PI * at) * (0.85 + 0.2 * noise(x * 0.02, y * 0.05, 0, 4));
  const nick = 0.2 * Math.exp(-(((y + 9) / 0.5) ** 2)) + 0.12 * Math.exp(-(((y - 13) / 0.4) ** 2));
  return wave + nick;
}

/** The inside of the right side rail, the chair upside down, light along it. */
export function planerRipple(): Scene {
  const tone = [0.85, 0.7, 0.62] as const;
  const rail = mahogany({
    along: 'x',
    board: 34,
    heart: [-120, 90],
    tone,
    gloss: 0.28,
    relief: ripple,
    reliefStepMm: 0.25,
  });
  return near(
    [
      ...box([-160, -34, -24], [130, 34, 0], rail),
      ...box([130, -160, -40], [175, 50, 8], mahogany({ along: 'y', board: 12 })),
      ...box([-400, -34, -24], [-160, 34, -0.001], rail),
    ],
    [-90, 78, 190],
    [10, -4, 0],
    { fieldDeg: 24, lamp: [-0.88, 0.4, 0.25], lampStrength: 2.5, roomStrength: 0.34 },
  );
}
