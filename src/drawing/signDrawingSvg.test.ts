import { beforeAll, describe, expect, test } from 'vitest';
import { houseKnowledge } from '../../test/kits/houseKnowledge.ts';
import type { SignDrawing } from '../knowledge/signDrawingSchema.ts';
import { signDrawingSvg } from './signDrawingSvg.ts';
import { signStrokes } from './signStrokes.ts';

const drawings: SignDrawing[] = [];
beforeAll(async () => {
  drawings.push(...Object.values((await houseKnowledge()).signDrawings ?? {}));
});

describe('the drawings of signs', () => {
  test('are thirty at least, each with words for who can’t see it', () => {
    expect(drawings.length).toBeGreaterThanOrEqual(30);
    for (const drawing of drawings) {
      const svg = signDrawingSvg(drawing);
      const leaders = (drawing.labels ?? []).filter(({ to }) => to !== undefined);
      expect(svg.match(/<path /g)).toHaveLength(signStrokes(drawing).length + leaders.length);
      expect(svg).toContain('<title id=');
      expect(drawing.what.length).toBeGreaterThan(40);
    }
  });

  test('stay on their sheet: every point that a stroke goes to lies on it', () => {
    for (const drawing of drawings) {
      const outside = signStrokes(drawing).flatMap(({ d }) =>
        pointsOf(d).filter(([x, y]) => x < 0 || x > 100 || y < 0 || y > 70),
      );
      expect([drawing.id, outside]).toEqual([drawing.id, []]);
    }
  });
});

test('a title is written so that it can’t break the picture', () => {
  const drawing: SignDrawing = {
    id: 'a-b',
    signs: ['a'],
    title: 'Less < more & "so"',
    what: 'A line.',
    strokes: [{ as: 'line', d: 'M 0 0 L 1 1' }],
  };
  expect(signDrawingSvg(drawing)).toContain('Less &#60; more &#38;');
});

/** How many numbers each letter takes, of which the last two (or one, for H and V) are where it goes. */
const takes: Record<string, number> = { M: 2, L: 2, T: 2, H: 1, V: 1, Q: 4, S: 4, C: 6, A: 7, Z: 0 };

/** The points a path goes to; curves are followed only to their ends. */
function pointsOf(d: string): [number, number][] {
  const points: [number, number][] = [];
  let [x, y, letter, startX, startY] = [0, 0, 'M', 0, 0];
  const tokens = d.match(/[a-zA-Z]|-?\d*\.?\d+/g) ?? [];
  for (let at = 0; at < tokens.length; ) {
    if (/[a-zA-Z]/.test(tokens[at] ?? '')) letter = tokens[at++] ?? '';
    const count = takes[letter.toUpperCase()] ?? 0;
    const numbers = tokens.slice(at, at + count).map(Number);
    at += count;
    const relative = letter !== letter.toUpperCase();
    const end = numbers.at(-1) ?? 0;
    if (letter.toUpperCase() === 'Z') [x, y] = [startX, startY];
    else if (letter.toUpperCase() === 'H') x = relative ? x + end : end;
    else if (letter.toUpperCase() === 'V') y = relative ? y + end : end;
    else [x, y] = [(numbers.at(-2) ?? 0) + (relative ? x : 0), end + (relative ? y : 0)];
    if (letter.toUpperCase() === 'M') [startX, startY] = [x, y];
    points.push([x, y]);
  }
  return points;
}
