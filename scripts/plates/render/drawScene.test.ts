import { describe, expect, it } from 'vitest';
import { box } from '../solids/extrude.ts';
import { turn } from '../solids/turn.ts';
import { plain } from '../woods/wood.ts';
import { drawScene } from './drawScene.ts';
import type { Face, Scene } from './scene.ts';

const red = plain([0.6, 0.02, 0.02], 0, 0);
const green = plain([0.02, 0.6, 0.02], 0, 0);
const floor = box([-200, -1, -200], [200, 0, 200], plain([0.5, 0.5, 0.5], 0, 0));

function scene(faces: Face[], change: Partial<Scene> = {}): Scene {
  return {
    faces,
    eye: [0, 0, 300],
    target: [0, 0, 0],
    fieldDeg: 20,
    lamp: [0, 0.2, 1],
    lampStrength: 1,
    roomStrength: 0.3,
    nearnessMm: 5,
    ...change,
  };
}

const at = (bytes: Uint8Array, x: number, y: number) => [
  ...bytes.slice((y * 40 + x) * 3, (y * 40 + x) * 3 + 3),
];

describe('a drawn scene', () => {
  it('shows the nearer of two things, whichever is named first', () => {
    const far = box([-20, -20, -30], [20, 20, -10], red);
    const close = box([-5, -5, 0], [5, 5, 10], green);
    const one = drawScene(scene([...far, ...close]), 40, 30);
    expect(one).toEqual(drawScene(scene([...close, ...far]), 40, 30));
    const [r, g] = at(one, 20, 15) as [number, number];
    expect(g).toBeGreaterThan(2 * r);
  });

  it('leaves what no face covers black', () => {
    expect(at(drawScene(scene(box([-5, -5, 0], [5, 5, 10], red)), 40, 30), 1, 1)).toEqual([0, 0, 0]);
  });

  it('casts a shadow away from the lamp and not toward it', () => {
    const post = box([-5, 0, -5], [5, 60, 5], red);
    const from = {
      eye: [0, 300, 1] as const,
      target: [0, 0, 0] as const,
      lamp: [-1, 1, 0] as const,
      fieldDeg: 30,
    };
    const bytes = drawScene(scene([...floor, ...post], from), 40, 30);
    const [shaded, sunny] = [at(bytes, 28, 15)[0] as number, at(bytes, 12, 15)[0] as number];
    expect(shaded).toBeLessThan(sunny * 0.8);
  });

  it('sees a thing turned a quarter about the line of sight as tall as it was wide', () => {
    const bar = box([-25, -4, 0], [25, 4, 8], red);
    const upright = drawScene(scene(turn(bar, 'z', 90)), 40, 30);
    expect(at(upright, 20, 9)[0]).toBeGreaterThan(20);
    expect(at(upright, 26, 15)).toEqual([0, 0, 0]);
  });
});
