import { featuresOf, type GrainSilence, silenceOf } from '../../src/photo/grain/grainFeatures.ts';
import { type GrainMatch, matchGrain } from '../../src/photo/grain/grainMatch.ts';
import { facingStrips } from '../../src/photo/grain/grainStrips.ts';
import type { Picture } from '../../src/photo/picture.ts';
import { type GrainKind, type GrainPair, grainPair } from '../../test/kits/surfaces/grainPairs.ts';

/** One rendered pair, matched. */
export type Draw = {
  kind: GrainKind;
  onePiece: boolean;
  silence: GrainSilence | undefined;
  features: number[];
  match: GrainMatch;
};

/** Seeds of neighbouring pairs lie this far apart, since each uses some dozens after its own. */
const seedStep = 97;

/** Pairs of one kind, every other of one piece; pair i has the seed first + 97 i. */
export function drawPairs(kind: GrainKind, count: number, first: number, detail = 1): Draw[] {
  return Array.from({ length: count }, (_, index) => {
    const pair = grainPair(kind, index % 2 === 0, first + seedStep * index, detail);
    return matched(pair, pair.rendered.picture);
  });
}

/** The same pairs once more, their pictures put through something on the way: a file format, a scaling. */
export async function drawPairsThrough(
  kind: GrainKind,
  count: number,
  first: number,
  through: (picture: Picture) => Promise<Picture>,
): Promise<Draw[]> {
  const draws: Draw[] = [];
  for (let index = 0; index < count; index++) {
    const pair = grainPair(kind, index % 2 === 0, first + seedStep * index);
    draws.push(matched(pair, await through(pair.rendered.picture)));
  }
  return draws;
}

function matched({ kind, onePiece, rendered: { a, b, directionDeg } }: GrainPair, picture: Picture): Draw {
  const strips = facingStrips(picture, a, b, directionDeg);
  if (typeof strips === 'string') throw new Error(`a rendered ${kind} pair does not face: ${strips}`);
  const match = matchGrain(strips);
  const rows = Math.min(...strips.strips.map((each) => each.rows));
  return { kind, onePiece, silence: silenceOf(match, rows), features: featuresOf(match), match };
}
