import { readFile } from 'node:fs/promises';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { parse } from 'yaml';
import { compileKnowledge } from '../src/knowledge/compileKnowledge.ts';
import { readKnowledgeFolder } from '../src/knowledge/readKnowledge.ts';
import type { PlateFile } from '../src/opinion/pdf/scalePlate.ts';
import { setOpinion } from '../src/opinion/setOpinion.ts';
import type { Photo } from '../src/piece/photo.ts';
import { piece } from '../src/piece/piece.ts';

/**
 * How long an opinion with 40 plates takes, from a cold start and again: `npx tsx bench/opinion.ts`.
 *
 * The plates are noise of 2048 × 1536 pixels, as large as the record's derived pictures and harder to pack than a photo.
 */
const plateCount = 40;
const [wide, high] = [2048, 1536];
const home = fileURLToPath(new URL('..', import.meta.url));

const { knowledge } = compileKnowledge(await readKnowledgeFolder(`${home}/knowledge`));
if (knowledge === undefined) throw new Error('The knowledge has faults: npm run knowledge lists them.');

const plates = await Promise.all(
  Array.from({ length: plateCount }, (_, index) => noisePlate(`plate-${index + 1}`)),
);
const chair = piece.parse({
  ...parse(await readFile(`${home}/examples/side-chair/piece.yaml`, 'utf8')),
  photos: Object.fromEntries(plates.map(({ id }) => [id, photoOf(id)])),
});

console.log(`${cpus()[0]?.model ?? 'unknown machine'}, ${cpus().length} cores, Node ${process.version}`);
for (const round of ['first', 'second', 'third']) {
  const times: Record<string, number> = {};
  const start = performance.now();
  const pdf = await setOpinion(
    { piece: chair, knowledge, yearNow: 2026, madeOn: '2026-11-25', version: 'bench', plates },
    (step) => {
      times[step] = performance.now() - start;
    },
  );
  const at = (step: string) => ((times[step] ?? 0) / 1000).toFixed(2);
  console.log(
    `${round}: 500 redraws weighed at ${at('Weighing the findings')} s, ${plateCount} plates scaled at ${at('Scaling the plates')} s, pages set at ${at('Ready')} s; ${(pdf.length / 1e6).toFixed(1)} MB`,
  );
}

/** Grey noise over a slope of colour, the same for the same id. */
async function noisePlate(id: string): Promise<PlateFile> {
  let seed = Number(id.split('-')[1]);
  const pixels = Buffer.alloc(wide * high * 3);
  for (let at = 0; at < pixels.length; at += 3) {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    const grain = (seed >>> 27) + Math.round((at / pixels.length) * 160);
    pixels.fill(grain, at, at + 3);
  }
  const bytes = await sharp(pixels, { raw: { width: wide, height: high, channels: 3 } })
    .jpeg({ quality: 85 })
    .toBuffer();
  return { id, mediaType: 'image/jpeg', bytes };
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
    alternative: 'Grey noise.',
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
