import sharp from 'sharp';
import { expect, test } from 'vitest';
import { findCalculation } from '../../calculations/registry.ts';
import { runById } from '../../calculations/runById.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import type { Picture } from '../../photo/picture.ts';
import { cropFor } from './cropFor.ts';

async function readPicture(file: string): Promise<Picture> {
  const { data, info } = await sharp(file).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  return { widthPx: info.width, heightPx: info.height, channels: 3, pixels: data };
}

function cut(picture: Picture, box: { x: number; y: number; widthPx: number; heightPx: number }): Picture {
  const { channels } = picture;
  const pixels = new Uint8Array(box.widthPx * box.heightPx * channels);
  for (let row = 0; row < box.heightPx; row++) {
    const from = ((box.y + row) * picture.widthPx + box.x) * channels;
    pixels.set(picture.pixels.subarray(from, from + box.widthPx * channels), row * box.widthPx * channels);
  }
  return { widthPx: box.widthPx, heightPx: box.heightPx, channels, pixels };
}

const regions: Record<string, object> = {
  'photo.grain': {},
  'photo.grain-match': {},
  'photo.colour-balance': {},
  'photo.toolmarks': { region: { x: 31, y: 17, widthPx: 400, heightPx: 300 } },
};

test.each(Object.keys(regions))('%s says the same of the part as of the whole picture', async (id) => {
  const input = { ...(findCalculation(id)?.example as { file: string }), ...regions[id] };
  const picture = await readPicture(input.file);
  const run = (of: Picture, asked: unknown) =>
    runById(id, asked, {
      knowledge: {} as Knowledge,
      yearNow: 2026,
      pictures: new Map([[input.file, of]]),
    });
  const crop = cropFor(input, picture);
  expect(crop.box.widthPx * crop.box.heightPx).toBeLessThan(picture.widthPx * picture.heightPx);
  const part = run(cut(picture, crop.box), crop.input);
  if (!part.ok) throw new Error(JSON.stringify(part.faults));
  expect({ ok: true, output: crop.back(part.output) }).toEqual(run(picture, input));
});

test('without a region the whole picture is looked at', () => {
  const input = { file: 'x.jpg', mmPerPx: 0.2 };
  expect(cropFor(input, { widthPx: 40, heightPx: 30 })).toMatchObject({
    box: { x: 0, y: 0, widthPx: 40, heightPx: 30 },
    input,
  });
});

test('strips drawn as outlines are moved with the part, and regions that reach outside are held to the picture', () => {
  const { box, input } = cropFor(
    {
      file: 'x',
      a: {
        points: [
          [10, 20],
          [30, 20],
          [20, 44.5],
        ],
      },
      b: { x: 12, y: 50, widthPx: 100, heightPx: 9 },
    },
    { widthPx: 60, heightPx: 80 },
  );
  expect(box).toEqual({ x: 10, y: 20, widthPx: 50, heightPx: 39 });
  expect(input).toMatchObject({
    a: {
      points: [
        [0, 0],
        [20, 0],
        [10, 24.5],
      ],
    },
    b: { x: 2, y: 30 },
  });
});
