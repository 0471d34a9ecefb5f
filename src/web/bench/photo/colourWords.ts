import type { photoColourBalance } from '../../../calculations/photoColourBalance.ts';
import type { OutputOf } from '../../../calculations/runCalculation.ts';
import { capital } from '../../../ground/words.ts';
import { told } from '../../../units/doubt.ts';

/** What `photo.colour-balance` gives back. */
export type Balanced = OutputOf<typeof photoColourBalance>;

/** Two places compared, in words. */
export function colourWords({ comparison, notes }: Balanced, exposed: string, covered: string): string {
  if (comparison === null) return notes.join(' ');
  const { deltaE2000, sigma, darkerByL } = comparison;
  const off = Math.abs(darkerByL);
  const way =
    off < 0.5
      ? 'as light as'
      : darkerByL > 0
        ? `darker by ${off.toFixed(1)} of 100 than`
        : `paler by ${off.toFixed(1)} of 100 than`;
  return [
    `${capital(exposed)} and ${covered} differ by ${deltaE2000.toFixed(1)}, give or take ${told(sigma) < 0.05 ? 'less than 0.1' : told(sigma).toFixed(1)} (CIEDE2000; 2 to 3 is plain to the eye); ${exposed} is ${way} ${covered}.`,
    ...notes,
  ].join(' ');
}
