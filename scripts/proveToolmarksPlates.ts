/** Tries the rule for tool marks on boards of the plates’ renderer, which it did not learn from, and prints the figures of docs/toolmarks.md: `npx tsx scripts/proveToolmarksPlates.ts [COUNT] [FROM]`. */

import type { Region } from '../src/photo/picture.ts';
import { toolmarks } from '../src/photo/toolmarks/toolmarks.ts';
import { markKinds } from '../src/photo/toolmarks/toolmarksNamed.ts';
import { planerPlate, plateBoard, plateKinds, platePlaces } from './toolmarksPlates.ts';

const count = Number(process.argv[2] ?? 12);
const from = Number(process.argv[3] ?? 60_001);
const answers = [...markKinds, 'cannot-tell'] as const;
console.log(`| drawn | ${answers.join(' | ')} | pitch within 5 in 100 |`);
for (const kind of plateKinds) {
  const row = answers.map(() => 0);
  const why = new Map<string, number>();
  let near = 0;
  for (let seed = from; seed < from + count; seed++) {
    const { picture, mmPerPx, pitchMm } = plateBoard(kind, seed);
    const whole = { x: 0, y: 0, widthPx: picture.widthPx, heightPx: picture.heightPx };
    const found = toolmarks(picture, whole, mmPerPx, 0);
    if (found === undefined) throw new Error(`${kind} ${seed} is too small`);
    const at = answers.indexOf(found.kind);
    row[at] = (row[at] as number) + 1;
    if (found.why !== undefined) why.set(found.why, (why.get(found.why) ?? 0) + 1);
    if (found.pitch && Math.abs(found.pitch.mm / pitchMm - 1) < 0.05) near++;
  }
  console.log(`| ${kind} | ${row.join(' | ')} | ${near} of ${count} |`, Object.fromEntries(why));
}
const rail = planerPlate();
for (const [name, place] of Object.entries(platePlaces)) {
  const found = toolmarks(rail, place.region satisfies Region, place.mmPerPx, place.directionRad);
  const ratio = Object.entries(found?.likelihoods ?? {}).map(([kind, each]) => `${kind} ${each.toFixed(2)}`);
  console.log(`rail, ${name}: ${found?.kind} (${found?.why ?? 'told'}); ${ratio.join(', ')}`);
}
