import { expect, test } from 'vitest';
import { type CardView, photographedCard } from '../../../../test/kits/photographedCard.ts';
import { printedCard } from '../../../../test/kits/printedCard.ts';
import { mean } from '../../../ground/statistics.ts';
import { rgbOfHex } from '../../../photo/colour/colourSpace.ts';
import { mapped } from '../../../photo/geometry/homography.ts';
import { cornersOf, scaleCard } from '../../../photo/geometry/scaleCard.ts';
import { cardRegions } from './cardRegions.ts';

test('the grays of a card photographed aslant are found where they lie, each within its patch', async () => {
  const view: CardView = {
    widthPx: 1400,
    heightPx: 1300,
    toPicture: [
      [3.6, 0.9, 260],
      [-0.8, 3.7, 300],
      [0.0001, 0.0002, 1],
    ],
    noise: 1,
    seed: 3,
  };
  const picture = photographedCard(await printedCard('a4', 200), view);
  const world = scaleCard.boards.flatMap(cornersOf);
  const image = world.map((place) => mapped(view.toPicture, place).point);
  const patches = cardRegions(image, world, view);
  expect(patches).toHaveLength(6);
  for (const { region, nominal } of patches) {
    const tones: number[] = [];
    for (let y = region.y; y < region.y + region.heightPx; y++)
      for (let x = region.x; x < region.x + region.widthPx; x++)
        tones.push(picture.pixels[y * picture.widthPx + x] as number);
    const average = mean(tones);
    const spread = Math.sqrt(tones.reduce((sum, each) => sum + (each - average) ** 2, 0) / tones.length);
    // The kit’s photograph: paper and ink as 25 + 0.85 of the tone, light falling from 0.95 to 0.75 towards the left.
    const light = 0.75 + (0.2 * (region.x + region.widthPx / 2)) / view.widthPx;
    expect(Math.abs(average - light * (25 + 0.85 * 255 * (rgbOfHex(nominal)[0] as number)))).toBeLessThan(3);
    expect(spread).toBeLessThan(3);
  }
}, 60_000);

test('a card half out of the picture gives only the patches that are in it', () => {
  const world = scaleCard.boards.flatMap(cornersOf);
  const image = world.map(([x, y]) => [x * 4 - 300, y * 4] as const);
  const patches = cardRegions(image, world, { widthPx: 1000, heightPx: 1000 });
  // The patches stand 30 mm apart from 2.5 mm on; the picture begins at 75 mm.
  expect(patches.length).toBe(3);
  expect(patches.every(({ region }) => region.x >= 0)).toBe(true);
});
