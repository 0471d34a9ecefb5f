/** The modules of a square code: its side, and whether one is dark. */
export type QrModules = { size: number; get: (x: number, y: number) => boolean };

/** @source ISO/IEC 18004: four modules of light around the code */
const quietModules = 4;

/** The dark modules of a code as the path of a drawing, with the light margin that a camera needs around it. */
export function qrPath({ size, get }: QrModules): { size: number; d: string } {
  const steps: string[] = [];
  for (let y = 0; y < size; y += 1)
    for (let x = 0; x < size; x += 1)
      if (get(x, y)) steps.push(`M${x + quietModules} ${y + quietModules}h1v1h-1z`);
  return { size: size + 2 * quietModules, d: steps.join('') };
}
