import { readFile } from 'node:fs/promises';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { parse } from 'yaml';
import { seededRandom } from '../src/ground/seededRandom.ts';
import { compileKnowledge } from '../src/knowledge/compileKnowledge.ts';
import { readKnowledgeFolder } from '../src/knowledge/readKnowledge.ts';
import type { PlateFile } from '../src/opinion/pdf/scalePlate.ts';
import { setOpinion } from '../src/opinion/setOpinion.ts';
import type { Photo } from '../src/piece/photo.ts';
import { piece } from '../src/piece/piece.ts';

/**
 * How long an opinion with 40 plates takes, from a cold start and again: `npx tsx bench/opinion.ts [--originals]`.
 *
 * The plates are noise, harder to pack than a photo: 2048 × 1536 pixels as the record's derived pictures, which are printed
 * as they are; with `--originals` 6000 × 4000, which are scaled first.
 */
const plateCount = 40;
const originals = process.argv.includes('--originals');
const [wide, high] = originals ? [6000, 4000] : [2048, 1536];
const home = fileURLToPath(new URL('..', import.meta.url));

const { knowledge } = compileKnowledge(await readKnowledgeFolder(`${home}/knowledge`));
if (knowledge === undefined) throw new Error('The knowledge has faults: npm run knowledge lists them.');

const plates = await noisePlates();
const chair = piece.parse({
  ...parse(await readFile(`${home}/examples/side-chair/piece.yaml`, 'utf8')),
  photos: Object.fromEntries(plates.map(({ id }) => [id, photoOf(id)])),
});

console.log(`${cpus()[0]?.model ?? 'unknown machine'}, ${cpus().length} cores, Node ${process.version}`);
for (const round of ['first', 'second', 'third']) {
  const marks: Record<string, { wall: number; processor: number }> = {};
  const start = performance.now();
  const before = process.cpuUsage();
  const pdf = await setOpinion(
    { piece: chair, knowledge, yearNow: 2026, madeOn: '2026-11-25', version: 'bench', plates },
    (step) => {
      const { user, system } = process.cpuUsage(before);
      marks[step] = { wall: (performance.now() - start) / 1000, processor: (user + system) / 1e6 };
    },
  );
  const at = (step: string) =>
    `${(marks[step]?.wall ?? 0).toFixed(2)} s (processor ${(marks[step]?.processor ?? 0).toFixed(2)} s)`;
  console.log(
    `${round}: 500 redraws weighed at ${at('Weighing the findings')}, ${plateCount} plates at hand at ${at('Scaling the plates')}, pages set at ${at('Ready')}; ${(pdf.length / 1e6).toFixed(1)} MB`,
  );
}

/** Grey noise over a slope, the same every time, each plate a little further along it. */
async function noisePlates(): Promise<PlateFile[]> {
  const row = wide + plateCount;
  const random = seededRandom(1);
  const pixels = Buffer.alloc(row * high * 3);
  for (let at = 0; at < pixels.length; at += 3) {
    pixels.fill(Math.floor(random() * 32) + Math.round((at / pixels.length) * 160), at, at + 3);
  }
  const found: PlateFile[] = [];
  for (let index = 0; index < plateCount; index++) {
    const bytes = await sharp(pixels, { raw: { width: row, height: high, channels: 3 } })
      .extract({ left: index, top: 0, width: wide, height: high })
      .jpeg({ quality: 85 })
      .toBuffer();
    found.push({ id: `plate-${index + 1}`, mediaType: 'image/jpeg', bytes });
  }
  return found;
}

function photoOf(id: string): Photo {
  return {
    id,
    sha256: '0'.repeat(64),
    mediaType: 'image/jpeg',
    name: `${id}.jpg`,
    bytes: 1,
    widthPx: wide,
    heightPx: high,
    caption: `Noise, ${id}`,
    alternative: 'Gray noise.',
    asPlate: true,
    marks: [
      { id: 'm', number: 1, kind: 'point', points: [[0.4, 0.4]], words: 'A mark' },
      {
        id: 'n',
        number: 2,
        kind: 'line',
        points: [
          [0.1, 0.2],
          [0.5, 0.7],
        ],
        words: 'A line',
      },
    ],
  };
}
