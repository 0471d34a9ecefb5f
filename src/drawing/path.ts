import { evaluate, type Lengths } from './expression.ts';
import { type Curve, endOf, lineTo, type Point, type Run } from './outline.ts';
import { smoothLine } from './smoothLine.ts';
import { turned } from './turned.ts';

/** Shapes that a form draws more than once, by name: each is a path over names of its own, given where it is called. */
export type NamedShapes = Readonly<Record<string, { of: readonly string[]; path: string }>>;

/** The runs a path string draws, or what is wrong with it. */
export type PathResult = { ok: true; runs: Run[] } | { ok: false; message: string };

/**
 * Reads a path of a form's drawing: letters for what is drawn, then sums over the measures, parted by spaces.
 *
 * `M x y` begins an outline, `I x y` an incised line; `L x y …` straight, `~ x y …` smooth through the points,
 * `C x y x y x y …` a curve by its control points, `Z` closes. `R x y width height [round]` is a rectangle from its lower
 * left corner, `O x y rx ry` an ellipse. `T x` completes the half profile of a turning at its upright axis, `S y` at a
 * lying one. Millimetres; x to the right, y up from the floor (underside: from the back
 * of the seat to its front). `@name a b …` draws a named shape, its own names standing for a, b …; it may call the shapes
 * named above it.
 *
 * @param mirror  true where the outline meets a mirror at x = 0: smooth lines cross it square
 */
export function readPath(
  text: string,
  lengths: Lengths,
  mirror = false,
  shapes: NamedShapes = {},
): PathResult {
  const runs: Run[] = [];
  for (const { letter, sums } of commandsOf(text)) {
    const numbers: number[] = [];
    for (const each of sums) {
      const result = evaluate(each, lengths);
      if (!result.ok) return fault(text, result.message);
      numbers.push(result.value);
    }
    if (letter.startsWith('@')) {
      const called = callShape(letter.slice(1), numbers, lengths, mirror, shapes);
      if (!called.ok) return fault(text, called.message);
      runs.push(...called.runs);
      continue;
    }
    const need = needs[letter];
    if (need === undefined)
      return fault(
        text,
        `"${letter}" draws nothing; use M, I, L, ~, C, Z, T, S, R, O or @ and a shape's name.`,
      );
    if (!need.fits(numbers.length)) return fault(text, `"${letter}" takes ${need.takes}.`);
    const trouble = draw(runs, letter, numbers, mirror);
    if (trouble !== undefined) return fault(text, trouble);
  }
  if (runs.length === 0) return { ok: false, message: 'A path is empty: begin it with M x y.' };
  return { ok: true, runs };
}

function callShape(
  name: string,
  numbers: readonly number[],
  lengths: Lengths,
  mirror: boolean,
  shapes: NamedShapes,
): PathResult {
  const known = Object.keys(shapes);
  const shape = Object.hasOwn(shapes, name) ? shapes[name] : undefined;
  if (shape === undefined)
    return { ok: false, message: `No shape named "${name}" stands above: name it under \`shapes\`.` };
  if (numbers.length !== shape.of.length)
    return { ok: false, message: `"@${name}" takes ${shape.of.join(', ') || 'nothing'}.` };
  const own = Object.fromEntries(shape.of.map((each, index) => [each, numbers[index] ?? 0]));
  const above = Object.fromEntries(Object.entries(shapes).slice(0, known.indexOf(name)));
  return readPath(shape.path, { ...lengths, ...own }, mirror, above);
}

const needs: Record<string, { takes: string; fits: (count: number) => boolean }> = {
  M: { takes: 'x and y', fits: (count) => count === 2 },
  I: { takes: 'x and y', fits: (count) => count === 2 },
  L: { takes: 'x and y of each point', fits: (count) => count > 0 && count % 2 === 0 },
  '~': { takes: 'x and y of each point', fits: (count) => count > 0 && count % 2 === 0 },
  C: { takes: 'six sums for each curve', fits: (count) => count > 0 && count % 6 === 0 },
  Z: { takes: 'nothing', fits: (count) => count === 0 },
  T: { takes: 'the x of its axis', fits: (count) => count === 1 },
  S: { takes: 'the y of its axis', fits: (count) => count === 1 },
  R: { takes: 'x, y, width, height and perhaps a rounding', fits: (count) => count === 4 || count === 5 },
  O: { takes: 'x, y and two radii', fits: (count) => count === 4 },
};

function fault(text: string, message: string): PathResult {
  const shown = text.trim().replaceAll(/\s+/g, ' ');
  return {
    ok: false,
    message: `In the path "${shown.length > 60 ? `${shown.slice(0, 57)}…` : shown}": ${message}`,
  };
}

function commandsOf(text: string): { letter: string; sums: string[] }[] {
  const commands: { letter: string; sums: string[] }[] = [];
  for (const token of text.split(/\s+/).filter((each) => each !== '')) {
    const last = commands.at(-1);
    if (/^([A-Z]|~|@[a-z][A-Za-z0-9]*)$/.test(token) || last === undefined)
      commands.push({ letter: token, sums: [] });
    else last.sums.push(token);
  }
  return commands;
}

/** Adds what one command draws to the runs; answers with what is wrong, if anything. */
function draw(runs: Run[], letter: string, numbers: readonly number[], mirror: boolean): string | undefined {
  if (letter === 'M' || letter === 'I') {
    runs.push({ start: pairs(numbers)[0] as Point, curves: [], closed: false, incised: letter === 'I' });
    return undefined;
  }
  if (letter === 'R' || letter === 'O') {
    runs.push(letter === 'R' ? rectangle(numbers) : ellipse(numbers));
    return undefined;
  }
  const run = runs.at(-1);
  if (run === undefined || run.closed)
    return `"${letter}" comes before "M x y": say where the outline begins.`;
  if (letter === 'Z') {
    const closing = samePlace(endOf(run), run.start) ? [] : [lineTo(endOf(run), run.start)];
    runs[runs.length - 1] = { ...run, curves: [...run.curves, ...closing], closed: true };
    return undefined;
  }
  if (letter === 'T' || letter === 'S') {
    if (run.incised || run.curves.length === 0)
      return `"${letter}" completes an outline: draw half of it first.`;
    runs.splice(-1, 1, ...turned(run, letter === 'T' ? { x: numbers[0] ?? 0 } : { y: numbers[0] ?? 0 }));
    return undefined;
  }
  runs[runs.length - 1] = { ...run, curves: [...run.curves, ...curvesOf(run, letter, numbers, mirror)] };
  return undefined;
}

function curvesOf(run: Run, letter: string, numbers: readonly number[], mirror: boolean): Curve[] {
  const points = pairs(numbers);
  const from = endOf(run);
  if (letter === 'L') return points.map((point, index) => lineTo(points[index - 1] ?? from, point));
  if (letter === 'C')
    return points.flatMap((_, index) =>
      index % 3 === 0 ? [points.slice(index, index + 3) as unknown as Curve] : [],
    );
  const onMirror = (point: Point | undefined) =>
    mirror && !run.incised && point !== undefined && Math.abs(point[0]) < 1e-6;
  return smoothLine([from, ...points], {
    start: onMirror(from) && run.curves.length === 0,
    end: onMirror(points.at(-1)),
  });
}

function rectangle([x = 0, y = 0, width = 0, height = 0, round = 0]: readonly number[]): Run {
  const r = Math.max(0, Math.min(round, width / 2, height / 2));
  const [right, top] = [x + width, y + height];
  const curves: Curve[] = [];
  const corner = (from: Point, at: Point, to: Point) => {
    curves.push(lineTo(curves.at(-1)?.[2] ?? [x + r, y], from));
    if (r > 0) curves.push([toward(from, at), toward(to, at), to]);
  };
  corner([right - r, y], [right, y], [right, y + r]);
  corner([right, top - r], [right, top], [right - r, top]);
  corner([x + r, top], [x, top], [x, top - r]);
  corner([x, y + r], [x, y], [x + r, y]);
  return { start: [x + r, y], curves, closed: true, incised: false };
}

/** How far control points of a quarter circle stand out. */
const quarter = 0.5523;

function toward(from: Point, corner: Point): Point {
  return [from[0] + (corner[0] - from[0]) * quarter, from[1] + (corner[1] - from[1]) * quarter];
}

function ellipse([x = 0, y = 0, rx = 0, ry = 0]: readonly number[]): Run {
  const at = (dx: number, dy: number): Point => [x + dx * rx, y + dy * ry];
  return {
    start: at(1, 0),
    curves: [
      [at(1, quarter), at(quarter, 1), at(0, 1)],
      [at(-quarter, 1), at(-1, quarter), at(-1, 0)],
      [at(-1, -quarter), at(-quarter, -1), at(0, -1)],
      [at(quarter, -1), at(1, -quarter), at(1, 0)],
    ],
    closed: true,
    incised: false,
  };
}

function pairs(numbers: readonly number[]): Point[] {
  return numbers.flatMap((x, index): Point[] => (index % 2 === 0 ? [[x, numbers[index + 1] ?? 0]] : []));
}

function samePlace(a: Point, b: Point): boolean {
  return Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-6;
}
