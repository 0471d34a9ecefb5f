/** Tries the rule for tool marks on drawn surfaces it has not seen and prints the figures of docs/toolmarks.md: `npx tsx scripts/proveToolmarks.ts [COUNT] [WEAK]`, WEAK a factor on the depth of all marks. */

import { type Toolmarks, toolmarks } from '../src/photo/toolmarks/toolmarks.ts';
import { mostMarksRatio } from '../src/photo/toolmarks/toolmarksKinds.ts';
import { type MarkKind, markKinds } from '../src/photo/toolmarks/toolmarksNamed.ts';
import { renderMarks } from '../test/kits/surfaces/renderMarks.ts';
import { drawnKinds } from './toolmarkFeatures.ts';

const count = Number(process.argv[2] ?? 50);
const weak = Number(process.argv[3] ?? 1);
const answers = [...markKinds, 'cannot-tell'] as const;
const pitchOff = new Map<string, number[]>();
const pitchHeld = new Map<string, number>();
const radii: { off: number; within2: boolean }[] = [];
const straight = { looked: 0, arcs: 0 };
let [bits, held, bounded] = [0, 0, 0];
console.log(`| drawn | ${answers.join(' | ')} |`);
for (const kind of drawnKinds) {
  const row = answers.map(() => 0);
  for (let index = 0; index < count; index++) {
    const { picture, mmPerPx, directionDeg, truth } = renderMarks(kind, 30_001 + index, weak);
    const whole = { x: 0, y: 0, widthPx: picture.widthPx, heightPx: picture.heightPx };
    const found = toolmarks(picture, whole, mmPerPx, (directionDeg * Math.PI) / 180) as Toolmarks;
    row[answers.indexOf(found.kind)] = (row[answers.indexOf(found.kind)] as number) + 1;
    if (kind !== 'none') weigh(kind, found);
    if (truth.pitchMm && found.pitch) gather(kind, found.pitch, truth.pitchMm);
    if (truth.radiusMm && found.arc)
      radii.push({
        off: Math.abs(found.arc.radiusMm / truth.radiusMm - 1),
        within2: Math.abs(found.arc.radiusMm - truth.radiusMm) < 2 * found.arc.sigmaMm,
      });
    if (['rotary-planer', 'straight-saw', 'band-saw'].includes(kind)) {
      straight.looked++;
      if (found.arc) straight.arcs++;
    }
  }
  console.log(`| ${kind} | ${row.join(' | ')} |`);
}
console.log(
  `cost of the likelihoods (bits a surface, even odds before; 2.58 says nothing): ${(bits / held).toFixed(2)}`,
);
console.log(`the true kind at the lower bound: ${bounded} of ${held}`);
for (const [kind, offs] of pitchOff)
  console.log(
    `pitch of ${kind}: found ${offs.length}, half within ${percent(middle(offs, 0.5))}, nine tenths within ${percent(middle(offs, 0.9))}, within two sigma ${pitchHeld.get(kind)}`,
  );
const offs = radii.map(({ off }) => off);
console.log(
  `radius: found ${radii.length}, half within ${percent(middle(offs, 0.5))}, nine tenths within ${percent(middle(offs, 0.9))}, within two sigma ${radii.filter(({ within2 }) => within2).length}`,
);
console.log(`straight marks called arcs: ${straight.arcs} of ${straight.looked}`);

function weigh(kind: MarkKind, { likelihoods }: Toolmarks): void {
  const all = Object.values(likelihoods).reduce((sum, each) => sum + each, 0);
  bits -= Math.log2(likelihoods[kind] / all);
  held++;
  if (likelihoods[kind] <= 1.001 / mostMarksRatio) bounded++;
}

function gather(kind: string, { mm, sigmaMm }: { mm: number; sigmaMm: number }, trueMm: number): void {
  pitchOff.set(kind, [...(pitchOff.get(kind) ?? []), Math.abs(mm / trueMm - 1)]);
  if (Math.abs(mm - trueMm) < 2 * sigmaMm) pitchHeld.set(kind, (pitchHeld.get(kind) ?? 0) + 1);
}

function middle(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} in 100`;
}
