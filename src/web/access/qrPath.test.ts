import readCode from 'jsqr';
import { generate } from 'lean-qr';
import { expect, it } from 'vitest';
import { qrPath } from './qrPath.ts';

const pixelsOfModule = 4;

/** The picture that the path draws, as a camera has it. */
function drawn({ size, d }: { size: number; d: string }) {
  const side = size * pixelsOfModule;
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255);
  for (const [, left, top] of d.matchAll(/M(\d+) (\d+)h1v1h-1z/g))
    for (let y = 0; y < pixelsOfModule; y += 1)
      for (let x = 0; x < pixelsOfModule; x += 1) {
        const at = ((Number(top) * pixelsOfModule + y) * side + Number(left) * pixelsOfModule + x) * 4;
        pixels.fill(0, at, at + 3);
      }
  return { pixels, side };
}

// Read back by another library (jsQR).
it.each([
  'https://192.168.1.20:4718/pair#K7Q2MXF4T9BD',
  'https://[fd00::2]:4718/pair#23456789ABCD',
  'https://office.local:4718/',
])('draws a code that is read as %s', (text) => {
  const { pixels, side } = drawn(qrPath(generate(text)));
  expect(readCode(pixels, side, side)?.data).toBe(text);
});
