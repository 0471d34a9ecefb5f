import { expect, it } from 'vitest';
import { looksOfVisit, simulatedRow } from '../../scripts/validate/simulate.ts';
import { blunterDraw } from '../../scripts/validate/simulateCase.ts';
import { betaDraw } from '../../src/evidence/betaDraws.ts';
import { seededRandom } from '../../src/ground/seededRandom.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';

const seeds = Array.from({ length: 100 }, (_, index) => 1001 + index);

// docs/simulation.md has the figures of more cases; a case in twenty may be wrong, and of so few one more by chance; few are called settled,
// and of a short visit hardly any.
it('calls settled what is true in 95 of 100 cases drawn from the model, with figures redrawn or every sign blunter', async () => {
  const knowledge = await houseKnowledge();
  const blunt = blunterDraw(knowledge);
  for (const figures of [(seed: number) => betaDraw(seededRandom(10_000 + seed)), () => blunt]) {
    const row = simulatedRow(knowledge, figures, seeds, 100, looksOfVisit.full);
    expect(row.makingFirm).toBeGreaterThan(5);
    for (const [right, all] of [
      [row.firmRight, row.firm],
      [row.makingFirmRight, row.makingFirm],
    ] as const)
      expect(all - right, JSON.stringify(row)).toBeLessThanOrEqual(Math.ceil(0.05 * all) + 1);
  }
}, 3_600_000);
