import { featuresOf, type GrainSilence, silenceOf } from '../../src/photo/grainFeatures.ts';
import { type GrainMatch, matchGrain } from '../../src/photo/grainMatch.ts';
import { facingStrips } from '../../src/photo/grainStrips.ts';
import { type GrainKind, grainPair } from '../../src/photo/render/grainPairs.ts';

/** One rendered pair, matched. */
export type Draw = {
  kind: GrainKind;
  onePiece: boolean;
  silence: GrainSilence | undefined;
  features: number[];
  match: GrainMatch;
};

/** Pairs of one kind, every other of one piece; pair i has the seed first + i. */
export function drawPairs(kind: GrainKind, count: number, first: number, detail = 1): Draw[] {
  return Array.from({ length: count }, (_, index) => {
    const onePiece = index % 2 === 0;
    const { a, b, picture, directionDeg } = grainPair(kind, onePiece, first + index, detail).rendered;
    const strips = facingStrips(picture, a, b, directionDeg);
    if (typeof strips === 'string') throw new Error(`${kind} ${first + index}: ${strips}`);
    const match = matchGrain(strips);
    const rows = Math.min(...strips.strips.map((each) => each.rows));
    return { kind, onePiece, silence: silenceOf(match, rows), features: featuresOf(match), match };
  });
}
