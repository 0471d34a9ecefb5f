import type { MarkKind } from '../../../src/photo/toolmarks/toolmarksNamed.ts';
import type { Random } from './random.ts';

/** What was drawn: the spacing of marks that cross the board, and the radius of arcs. */
export type MarkTruth = { pitchMm?: number | undefined; radiusMm?: number | undefined };

/** Where the picture’s pixels lie on the board. */
type Place = { columns: number; rows: number; mmPerPx: number; turnRad: number };

/** A mark that crosses the board: where along, how deep and wide, and how it leans and bends. */
type CrossMark = { atMm: number; deepMm: number; wideMm: number; lean: number };

/**
 * The heights of a board’s face with marks of one kind, mm, pixel by pixel.
 *
 * Method: a hand plane leaves shallow hollows along the board, a few centimetres apart and never quite parallel, with the fine ridges of a nicked
 * iron; a rotary planer leaves waves of one pitch, of which one knife’s may stand out; a straight saw leaves lines at uneven
 * distances that lean a little differently; a circular saw arcs of one radius; a band saw fine lines, uneven, and a deeper
 * one where the band was joined; slicing opens short checks along the grain, evenly apart.
 */
export function markHeights(
  kind: MarkKind | 'none',
  random: Random,
  place: Place,
): { heights: Float32Array; truth: MarkTruth } {
  const heights = new Float32Array(place.columns * place.rows);
  const lengthMm = place.columns * place.mmPerPx;
  const widthMm = place.rows * place.mmPerPx;
  const draw = (marks: readonly CrossMark[], bend = 0, apexMm = 0) => {
    for (const mark of marks) drawCross(heights, place, mark, bend, apexMm);
  };
  switch (kind) {
    case 'hand-planed':
      drawPlaned(heights, place, random, widthMm);
      return { heights, truth: {} };
    case 'rotary-planer':
      return { heights, truth: { pitchMm: drawWaves(heights, place, random) } };
    case 'straight-saw': {
      const pitchMm = random.between(2, 7);
      const uneven = random.between(0.12, 0.4);
      const [lean, wander] = [random.between(-0.14, 0.14), random.between(0.003, 0.02)];
      draw(
        spaced(random, lengthMm, pitchMm, uneven).map((atMm) => ({
          atMm,
          deepMm: random.between(0.02, 0.14),
          wideMm: random.between(0.3, 1),
          lean: lean + wander * random.normal(),
        })),
      );
      return { heights, truth: { pitchMm } };
    }
    case 'circular-saw': {
      const [pitchMm, radiusMm] = [random.between(1.5, 5.5), random.between(125, 550)];
      const strong = 2 + Math.floor(random.between(0, 5));
      draw(
        spaced(random, lengthMm, pitchMm, random.between(0.03, 0.12)).map((atMm, index) => ({
          atMm,
          deepMm: random.between(0.02, 0.06) * (index % strong === 0 ? 1.7 : 1),
          wideMm: random.between(0.3, 0.8),
          lean: 0,
        })),
        (random.share() < 0.5 ? 1 : -1) / radiusMm,
        random.between(-0.25, 1.25) * widthMm,
      );
      return { heights, truth: { pitchMm, radiusMm } };
    }
    case 'band-saw': {
      const pitchMm = random.between(0.9, 2.5);
      const lean = random.between(-0.05, 0.05);
      const weld = random.between(25, 70);
      let nextWeld = random.between(0, weld);
      draw(
        spaced(random, lengthMm, pitchMm, random.between(0.06, 0.16)).map((atMm) => {
          const isWeld = atMm > nextWeld;
          if (isWeld) nextWeld += weld * random.between(0.9, 1.1);
          return {
            atMm,
            deepMm: random.between(0.008, 0.035) * (isWeld ? 3 : 1),
            wideMm: random.between(0.2, 0.45),
            lean: lean + 0.002 * random.normal(),
          };
        }),
      );
      return { heights, truth: { pitchMm } };
    }
    case 'sliced':
      drawChecks(heights, place, random, lengthMm, widthMm);
      return { heights, truth: {} };
    case 'none':
      return { heights, truth: {} };
  }
}

/** Places along, at a mean spacing and as uneven as told (standard deviation over the mean). */
function spaced(random: Random, lengthMm: number, pitchMm: number, uneven: number): number[] {
  const places: number[] = [];
  for (
    let at = -60 + pitchMm * random.share();
    at < lengthMm + 60;
    at += pitchMm * Math.max(0.25, 1 + uneven * random.normal())
  )
    places.push(at);
  return places;
}

function drawCross(
  heights: Float32Array,
  { columns, rows, mmPerPx, turnRad }: Place,
  { atMm, deepMm, wideMm, lean }: CrossMark,
  bend: number,
  apexMm: number,
): void {
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
  const apex = apexMm - (rows * mmPerPx) / 2;
  const top = atMm - (columns * mmPerPx) / 2;
  for (let y = 0; y < rows; y++) {
    const down = (y - rows / 2) * mmPerPx;
    // Where the mark crosses this row of the turned picture: a few rounds settle it, since marks are nearly upright.
    let right = top;
    for (let round = 0; round < 4; round++) {
      const across = cos * down - sin * right;
      const off = bend * (across - apex);
      const bow = bend === 0 ? 0 : (1 - Math.sqrt(Math.max(0, 1 - off * off))) / bend;
      right = (top + lean * across + bow - sin * down) / cos;
    }
    const centre = right + (columns * mmPerPx) / 2;
    const reach = 2.5 * wideMm;
    const from = Math.max(0, Math.ceil((centre - reach) / mmPerPx));
    const to = Math.min(columns - 1, Math.floor((centre + reach) / mmPerPx));
    for (let x = from; x <= to; x++) {
      const u = (x * mmPerPx - centre) / wideMm;
      heights[y * columns + x] = (heights[y * columns + x] as number) - deepMm * Math.exp(-2 * u * u);
    }
  }
}

function drawWaves(heights: Float32Array, place: Place, random: Random): number {
  const pitchMm = random.between(1, 4);
  // Some waves keep the cutter's arcs, others are rubbed down to round ones, and feed or a blunt knife makes them deeper.
  const round = random.share();
  const deep = Math.exp(random.between(0, Math.log(6)));
  const cutterMm = random.between(45, 75);
  const knives = 2 + Math.floor(random.between(0, 3));
  const proud = Math.floor(random.between(0, knives));
  const deeper = random.between(0, 0.5);
  const lean = random.between(-0.012, 0.012);
  const phase = random.share();
  each(
    place,
    (along, across) => {
      const wave = (along + lean * across) / pitchMm + phase;
      const off = (wave - Math.round(wave)) * pitchMm;
      const isProud = ((Math.round(wave) % knives) + knives) % knives === proud;
      const cusp = (pitchMm * pitchMm) / (8 * cutterMm);
      const arcs = (off * off) / (2 * cutterMm);
      const waves = -0.5 * cusp * Math.cos(2 * Math.PI * wave);
      return deep * ((1 - round) * arcs + round * waves - (isProud ? deeper * cusp : 0));
    },
    heights,
  );
  return pitchMm;
}

function drawPlaned(heights: Float32Array, place: Place, random: Random, widthMm: number): void {
  const strokes: { at: number; lean: number; low: number; half: number; camber: number; nicks: number[] }[] =
    [];
  const half = random.between(17, 27);
  const nicks = Array.from({ length: Math.floor(random.between(0, 4)) }, () => random.between(-0.8, 0.8));
  for (let at = -0.7 * widthMm; at < 0.7 * widthMm; at += random.between(0.5, 1.5) * half)
    strokes.push({
      at,
      lean: 0.02 * random.normal(),
      low: 0.012 * random.normal(),
      half,
      camber: random.between(0.04, 0.12),
      nicks,
    });
  each(
    place,
    (along, across) => {
      let low = Number.POSITIVE_INFINITY;
      for (const stroke of strokes) {
        const off = (across - stroke.at - stroke.lean * along) / stroke.half;
        let height = stroke.low + stroke.camber * off * off;
        for (const nick of stroke.nicks)
          height += 0.012 * Math.exp(-(((off - nick) * stroke.half) ** 2) / 0.02);
        if (height < low) low = height;
      }
      return low;
    },
    heights,
  );
}

function drawChecks(
  heights: Float32Array,
  place: Place,
  random: Random,
  lengthMm: number,
  widthMm: number,
): void {
  const apart = random.between(0.75, 1.8);
  const { columns, rows, mmPerPx, turnRad } = place;
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
  const share = random.between(0.25, 0.6);
  for (let across = -0.6 * widthMm; across < 0.6 * widthMm; across += apart * (1 + 0.12 * random.normal()))
    for (let along = -0.6 * lengthMm; along < 0.6 * lengthMm; ) {
      const long = random.between(2.5, 11);
      const deep = random.between(0.02, 0.07);
      for (let step = 0; step < long; step += mmPerPx / 2) {
        const [u, v] = [along + step, across + 0.05 * random.normal()];
        const x = Math.round((cos * u - sin * v) / mmPerPx + columns / 2);
        const y = Math.round((sin * u + cos * v) / mmPerPx + rows / 2);
        if (x >= 0 && y >= 0 && x < columns && y < rows)
          heights[y * columns + x] = Math.min(heights[y * columns + x] as number, -deep);
      }
      along += long + ((long * (1 - share)) / share) * random.between(0.3, 1.7);
    }
  const nicks = Math.floor(random.between(0, 4));
  for (let nick = 0; nick < nicks; nick++)
    drawCross(
      heights,
      place,
      { atMm: random.between(0, lengthMm), deepMm: 0.02, wideMm: 0.25, lean: 0.02 * random.normal() },
      0,
      0,
    );
}

/** A height at every pixel from where it lies on the board: along and across from the middle, mm. */
function each(
  { columns, rows, mmPerPx, turnRad }: Place,
  height: (alongMm: number, acrossMm: number) => number,
  heights: Float32Array,
): void {
  const [cos, sin] = [Math.cos(turnRad) * mmPerPx, Math.sin(turnRad) * mmPerPx];
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++) {
      const [dx, dy] = [x - columns / 2, y - rows / 2];
      heights[y * columns + x] = height(cos * dx + sin * dy, cos * dy - sin * dx);
    }
}
