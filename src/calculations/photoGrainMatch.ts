import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { sum } from '../ground/statistics.ts';
import { capital } from '../ground/words.ts';
import { type GrainSilence, leastContrast, mostGap, silenceOf } from '../photo/grain/grainFeatures.ts';
import { matchGrain } from '../photo/grain/grainMatch.ts';
import { type GrainOdds, grainOdds } from '../photo/grain/grainOdds.ts';
import { cornersOf, facingStrips, type StripArea, type StripsFault } from '../photo/grain/grainStrips.ts';
import { weightWords } from '../weighing/verbalScale.ts';
import { defineCalculation } from './define.ts';
import { matchFields, matchOutput } from './photoGrainMatchFields.ts';
import { namedPicture } from './pictureFields.ts';

/** `photo.grain-match`: see its own fields. */
export const photoGrainMatch = defineCalculation({
  id: 'photo.grain-match',
  answers: 'Does the grain below a cuff, joint or patch go on from the grain above it?',
  method:
    'Both strips are laid straight along directionDeg and cut to the width they share. In each, rows are slid sideways until they add up to the strongest profile, which gives the grain’s slope and how it draws together; along these lines ' +
    'the profile is carried to the middle of the band, slow changes (lighting) taken off and the rest brought to even strength. correlation is the largest normalized correlation within a shift of 1.5 pixels and a twentieth of the distance between the strips’ middles, and a stretch of 2.5 %. ' +
    'The same search is made where nothing should fit: strips of this photograph that do not face each other (shifted further, the same side further along, mirrored). Fit, how far it goes beyond these, how well each strip agrees with itself, and how far aside it fits, ' +
    'give likelihoodRatio (one piece : two) by a logistic regression learned on rendered boards of known truth, half of them from two trees of one wood sawn alike. ' +
    'It is held between lowest and highest, the most that counting those pairs supports (at most a third of their number), and never beyond 100 : 1 either way. It is exactly 1, with words, where a strip is too short, narrow, faint, or not at one with itself, the band too long, or the surface marked as painted. ' +
    'shiftPx is how far b’s grain lies aside of where a’s points, positive toward directionDeg + 90°. Boards of one tree laid on end, or a patch from the same plank, fit like one piece; unequal dirt, a plane’s or a brush’s marks and a bent or twisted part can part what is one. ' +
    'Painted and brushed surfaces that are not marked as painted can mislead. How it was tried stands in docs/grain.md.',
  source:
    'Ours, from common practice: slant stacks and normalized correlation (from memory), trying other offsets to see what chance reaches after tree-ring dating (Baillie and Pilcher, Tree-Ring Bulletin 33, 1973, read in its abstract), logistic regression of scores into likelihood ratios, bounds by the number of samples after Vergeer and others (Science and Justice 56, 2016, read in its summary) with the rule of three (Eypasch and others, British Medical Journal 311, 1995, as others cite it).',
  needsKnowledge: false,
  pictures: ({ file }) => [file],
  input: z.strictObject(matchFields),
  output: z.strictObject(matchOutput),
  example: {
    file: 'examples/pictures/grain-cuff.png',
    a: { x: 10, y: 10, widthPx: 260, heightPx: 200 },
    b: { x: 10, y: 292, widthPx: 260, heightPx: 170 },
    directionDeg: 90,
    mmPerPx: 0.25,
  },
  run: ({ file, a, b, directionDeg, painted, mmPerPx }, context) => {
    const areas = [
      { path: 'a', region: boxOf(a) },
      { path: 'b', region: boxOf(b) },
    ];
    const picture = namedPicture(file, areas, context);
    if (!picture.ok) return picture;
    const strips = facingStrips(picture.output, a, b, directionDeg);
    if (typeof strips === 'string') return { ok: false, faults: [stripsFault(strips)] };
    const [first, second] = strips.strips;
    if (first.columns < 12 || Math.min(first.rows, second.rows) < 6)
      return { ok: false, faults: [tooSmall()] };
    const match = matchGrain(strips);
    const silence = silenceOf(match, Math.min(first.rows, second.rows));
    const odds = grainOdds(match, painted ? 'unclear' : silence);
    const shiftPx = match.shiftPx * strips.factor * (strips.swapped ? -1 : 1);
    const shiftSigmaPx = odds.shiftSigmaPx * strips.factor;
    const [before, after] = match.profiles;
    const directions = [
      directionOf(directionDeg, -before.slope),
      directionOf(directionDeg, after.slope),
    ] as const;
    const [ofA, ofB] = strips.swapped ? [1, 0] : [0, 1];
    const decibans = 10 * Math.log10(odds.likelihoodRatio);
    return {
      ok: true,
      output: {
        correlation: match.correlation,
        shiftPx,
        shiftSigmaPx,
        ...(mmPerPx !== undefined && { shiftMm: shiftPx * mmPerPx, shiftSigmaMm: shiftSigmaPx * mmPerPx }),
        likelihoodRatio: odds.likelihoodRatio,
        decibans,
        sigmaDecibans: odds.sigmaDecibans,
        lowest: odds.lowest,
        highest: odds.highest,
        null: { ...odds.null, how: nullWords(odds, match.correlation) },
        tells: !painted && silence === undefined,
        says: painted
          ? `Cannot tell: ${paintedWords}.`
          : silence
            ? `Cannot tell: ${silenceWords[silence]}.`
            : saidWords(decibans, odds),
        stretch: match.stretch,
        factor: strips.factor,
        a: {
          grainDeg: directions[ofA] as number,
          agreement: profileOf(match, ofA).agreement,
          contrast: profileOf(match, ofA).contrast,
        },
        b: {
          grainDeg: directions[ofB] as number,
          agreement: profileOf(match, ofB).agreement,
          contrast: profileOf(match, ofB).contrast,
        },
        profiles: { a: drawable(profileOf(match, ofA).values), b: drawable(profileOf(match, ofB).values) },
      },
    };
  },
});

type Match = ReturnType<typeof matchGrain>;

function profileOf(match: Match, side: number): Match['profiles'][number] {
  return match.profiles[side] as Match['profiles'][number];
}

/** −90 to 90, as `photo.grain` has it. */
function directionOf(directionDeg: number, slope: number): number {
  const turned = directionDeg + (Math.atan(slope) * 180) / Math.PI;
  return turned - 180 * Math.round(turned / 180);
}

function boxOf(area: StripArea) {
  const corners = cornersOf(area);
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, widthPx: Math.max(...xs) - x, heightPx: Math.max(...ys) - y };
}

const paintedWords = 'paint hides the grain, and what shows through may be the brush’s';

const silenceWords: Record<GrainSilence, string> = {
  short: 'a strip is too short along the part to follow its grain; take in more of it',
  narrow:
    'the strips are too narrow for other places of this photograph to compare with; take in the whole width, or a closer photograph',
  far: `the band is longer than ${mostGap} widths of the strips, and over that grain may go anywhere`,
  faint: `on one side lightness varies by less than ${leastContrast} of 100 across the grain: plain wood, paint, or a blurred or underexposed photograph`,
  unclear:
    'one strip’s grain does not even agree with itself along its length: figure, dirt, blur or noise hides it, or it runs far off the part’s direction',
};

function saidWords(decibans: number, { null: { photoStrips, photoReached } }: GrainOdds): string {
  const weight = weightWords(decibans, 'one piece', 'two pieces');
  const beside =
    photoReached === 0
      ? `none of ${photoStrips} strips of this photograph that do not face each other fits as well`
      : `${photoReached} of ${photoStrips} strips of this photograph that do not face each other fit as well`;
  return `${capital(weight)}: ${beside}.`;
}

function nullWords(
  { null: { shippedPairs, onePiecePairs, photoStrips } }: GrainOdds,
  correlation: number,
): string {
  return (
    `Two nulls: ${photoStrips} searches over strips of this photograph that do not face each other, and ${shippedPairs} rendered pairs of two pieces that came with the program, ` +
    `beside ${onePiecePairs} of one piece; a correlation of ${correlation.toFixed(2)} was held against both.`
  );
}

/** At most some two hundred values: enough to draw. */
function drawable(values: Float64Array): number[] {
  const step = Math.ceil(values.length / 200);
  return Array.from({ length: Math.floor(values.length / step) }, (_, at) => {
    const part = values.subarray(at * step, (at + 1) * step);
    return Number((sum(part) / step).toFixed(3)) || 0;
  });
}

function stripsFault(fault: StripsFault): Fault {
  const message =
    fault === 'overlap-along'
      ? 'The two regions overlap along the part: draw one on either side of the band, clear of it.'
      : 'The two regions share no width across the part: draw them facing each other, or mend directionDeg.';
  return { code: `photo.strips-${fault}`, path: 'b', message };
}

function tooSmall(): Fault {
  const message = `What the two regions share is too small: it needs at least 12 pixels across the part and 6 along it even to try.`;
  return { code: 'photo.strips-too-small', path: 'a', message };
}
