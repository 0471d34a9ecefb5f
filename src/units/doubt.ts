/** How many standard uncertainties each `give or take` told to a person covers: 2, which is about 95 in 100. */
const toldSigmas = 2;

/** The half-width that is told for a standard uncertainty, in its own unit. */
export function told(sigma: number): number {
  return toldSigmas * sigma;
}

/** Whether a text tells such a figure, so that what it covers must be said beside it. */
export function tellsDoubt(text: string): boolean {
  return /give or take|±/i.test(text);
}

/** Said once wherever such a figure is told. */
export const coverageWords = '“Give or take” and ± cover about 95 in 100.';
