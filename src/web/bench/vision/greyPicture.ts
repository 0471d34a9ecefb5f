/** A picture in grey, row by row from the top left; the middle of the first pixel is [0, 0]. */
export type GreyPicture = { widthPx: number; heightPx: number; pixels: Uint8Array };

/** Part of a picture, made smaller by a whole number: where it was taken, so that its points can be carried back. */
export type Tile = GreyPicture & { leftPx: number; topPx: number; shrunk: number };

/**
 * A rectangle of a picture, shrunk by a whole number so that neither side is over the most allowed. Each pixel is the mean of those
 * it stands for.
 */
export function cutTile(
  picture: GreyPicture,
  { leftPx, topPx, widthPx, heightPx }: { leftPx: number; topPx: number; widthPx: number; heightPx: number },
  mostPx: number,
): Tile {
  const shrunk = Math.max(1, Math.ceil(Math.max(widthPx, heightPx) / mostPx));
  const [wide, high] = [Math.floor(widthPx / shrunk), Math.floor(heightPx / shrunk)];
  const pixels = new Uint8Array(wide * high);
  const sums = new Uint32Array(wide);
  for (let y = 0; y < high; y++) {
    sums.fill(0);
    for (let dy = 0; dy < shrunk; dy++) {
      let from = (topPx + y * shrunk + dy) * picture.widthPx + leftPx;
      for (let x = 0; x < wide; x++) {
        let sum = 0;
        for (let dx = 0; dx < shrunk; dx++) sum += picture.pixels[from++] as number;
        sums[x] = (sums[x] as number) + sum;
      }
    }
    const area = shrunk * shrunk;
    for (let x = 0; x < wide; x++) pixels[y * wide + x] = ((sums[x] as number) + area / 2) / area;
  }
  return { widthPx: wide, heightPx: high, pixels, leftPx, topPx, shrunk };
}

/** A point of a tile, in the picture it was cut from. */
export function fromTile(
  { leftPx, topPx, shrunk }: Tile,
  [x, y]: readonly [number, number],
): [number, number] {
  return [(x + 0.5) * shrunk - 0.5 + leftPx, (y + 0.5) * shrunk - 0.5 + topPx];
}
