import { encodedOf, linearOf, rgbOfHex } from '../src/photo/colour/colourSpace.ts';
import type { Picture } from '../src/photo/picture.ts';

/** What light and camera did to the drawer side: each channel’s linear light · gain + stray. */
export const drawerSideLight = { gain: [0.9, 0.8, 0.62], stray: 0.006 } as const;

/** The colours that the drawer side has, before the light: the card’s patches, and the board outside and inside. */
export const drawerSideColours = {
  patches: ['#333333', '#777777', '#dddddd'],
  outside: '#a9825a',
  inside: '#c9a878',
} as const;

/** A drawer side with a card of three greys laid on it: its outside on the left, its inside on the right. Invented. */
export function drawerSide(): Picture {
  const [widthPx, heightPx] = [320, 240];
  const pixels = new Uint8Array(widthPx * heightPx * 3);
  const draw = drawer(1766);
  const { patches, outside, inside } = drawerSideColours;
  for (let y = 0; y < heightPx; y++)
    for (let x = 0; x < widthPx; x++) {
      const patch = y < 74 ? patches[Math.floor((x - 10) / 70)] : undefined;
      const colour = rgbOfHex(patch ?? (x < 160 ? outside : inside));
      const grain =
        patch === undefined ? 1 + 0.05 * Math.sin(x / 3.1 + 2 * Math.sin(y / 90)) + 0.03 * (draw() - 0.5) : 1;
      for (let channel = 0; channel < 3; channel++) {
        const light =
          linearOf(colour[channel] as number) * grain * (drawerSideLight.gain[channel] as number) +
          drawerSideLight.stray;
        pixels[(y * widthPx + x) * 3 + channel] = Math.round(255 * encodedOf(Math.min(1, light)));
      }
    }
  return { widthPx, heightPx, channels: 3, pixels };
}

/** Numbers from 0 to 1 from a seed: Park and Miller’s generator. */
function drawer(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
