/** A source of numbers in [0, 1), handed in so that what was drawn can be drawn again. */
export type Random = () => number;

/**
 * Numbers in [0, 1) that a seed fixes.
 *
 * @source sfc32 of C. Doty-Humphrey's PractRand, in the public domain; from memory
 */
export function seededRandom(seed: number): Random {
  let a = seed | 0;
  let b = (seed ^ 0x9e3779b9) | 0;
  let c = (seed ^ 0x243f6a88) | 0;
  let counter = 1;
  const next = () => {
    const t = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return (t >>> 0) / 4294967296;
  };
  for (let i = 0; i < 12; i++) next();
  return next;
}

/** A draw from the normal distribution with mean 0 and standard deviation 1. @source Box and Muller (1958), from memory */
export function normalDraw(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
