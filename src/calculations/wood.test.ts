import { describe, expect, test } from 'vitest';
import { houseKnowledge } from '../../test/kits/houseKnowledge.ts';
import reference from '../../test/reference/wood.json' with { type: 'json' };
import { woodCoefficientFromShrinkage } from './byHand/woodShrinkage.ts';
import type { CalculationContext } from './define.ts';
import { runById } from './runById.ts';
import { outputOf } from './testing/outputOf.ts';
import { woodMoisture } from './wood.ts';
import { woodMovementCalculation } from './woodMovement.ts';
import { woodRoundness } from './woodRoundness.ts';

// Values and their sources: test/reference/wood.json.

const knowledge = await houseKnowledge();
const context: CalculationContext = { knowledge, yearNow: 2026 };

function outputById(id: string, input: object): Record<string, unknown> {
  const result = runById(id, input, context);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.output as Record<string, unknown>;
}

function faults(id: string, input: object): { code: string; path: string; message: string }[] {
  const result = runById(id, input, context);
  if (result.ok) throw new Error(`no fault: ${JSON.stringify(result.output)}`);
  return result.faults;
}

const board = {
  wood: 'walnut-black',
  cut: 'flat-sawn',
  widthMm: 300,
  fromMoisturePercent: 12,
  toMoisturePercent: 7,
};

describe('values from outside', () => {
  test.each(reference.cases)('$calculation $id', ({ calculation, input, expected, tolerance }) => {
    const found = outputById(calculation, input);
    for (const [field, value] of Object.entries(expected))
      expect(Math.abs((found[field] as number) - value), field).toBeLessThanOrEqual(tolerance);
  });

  test('the table of equilibrium moistures, every cell', () => {
    const { rows, relativeHumidityPercent, tolerance } = reference.equilibriumTable;
    let cells = 0;
    for (const { temperatureF, moisturePercent } of rows) {
      moisturePercent.forEach((value, index) => {
        const input = {
          temperatureC: ((temperatureF - 32) * 5) / 9,
          relativeHumidityPercent: relativeHumidityPercent[index],
        };
        expect(
          Math.abs((outputOf(woodMoisture, input, context).moisturePercent as number) - value),
        ).toBeLessThan(tolerance);
        cells++;
      });
    }
    expect(cells).toBe(228);
  });

  test.each(reference.listed)('wood.movement of a listed wood: $id', ({ input, expected, tolerance }) => {
    expect(
      Math.abs((outputOf(woodMovementCalculation, input, context).changeMm as number) - expected.changeMm),
    ).toBeLessThan(tolerance);
  });

  test('table 13-5 follows from table 4-3 in all woods read in a Handbook but those with a neighbor’s figures', () => {
    const { woods, bothRead } = reference.neighboursCoefficient;
    const read = Object.values(knowledge.woods).filter(
      ({ shrinkage, coefficient }) => shrinkage?.read === 'handbook' && readInHandbook(coefficient?.read),
    );
    expect(read).toHaveLength(bothRead);
    const apart = read.filter(({ shrinkage, coefficient }) =>
      (['radial', 'tangential'] as const).some((way) => {
        const found = outputOf(woodCoefficientFromShrinkage, {
          shrinkagePercent: shrinkage?.[`${way}Percent`],
        });
        return Math.abs((found.coefficient as number) - (coefficient?.[way] as number)) > 1.1e-5;
      }),
    );
    expect(apart.map(({ id }) => id)).toEqual(woods);
  });
});

/** Read there in at least one direction. */
function readInHandbook(read: unknown): boolean {
  return read === 'handbook' || (read as { radial?: string } | undefined)?.radial === 'handbook';
}

describe('the woods', () => {
  test('are at least sixty, each with a botanical name and a movement either way that the other tables bear out', () => {
    const woods = Object.values(knowledge.woods);
    expect(woods.length).toBeGreaterThanOrEqual(60);
    for (const { id, botanical } of woods) {
      expect(botanical).toMatch(/^[A-Z][a-z]+ ([a-z]+(-[a-z]+)?|spp\.)/);
      for (const method of ['coefficient', 'shrinkage'])
        for (const cut of ['flat-sawn', 'quarter-sawn']) {
          const { changeMm } = outputOf(
            woodMovementCalculation,
            { ...board, wood: id, cut, method },
            context,
          );
          // 5 points on 300 mm: from the calmest wood across its rings to the liveliest along them.
          expect(changeMm, `${id} ${cut} ${method}`).toBeLessThan(-0.9);
          expect(changeMm, `${id} ${cut} ${method}`).toBeGreaterThan(-7.5);
        }
    }
  });
});

describe('the cut', () => {
  test('may be a word, an angle, or an object with an angle, and the ends agree', () => {
    const change = (cut: object) =>
      outputOf(woodMovementCalculation, { ...board, cut: undefined, ...cut }, context).changeMm;
    expect(change({ cut: 0 })).toBe(change({ cut: 'flat-sawn' }));
    expect(change({ ringAngleDeg: 90 })).toBeCloseTo(change({ cut: 'quarter-sawn' }) as number, 12);
    expect(change({ cut: { ringAngleDeg: 30 } })).toBe(change({ ringAngleDeg: 30 }));
    // Halfway between, by hand: 300 · (0.00190 + 0.00274)/2 · −5.
    expect(change({ cut: 45 })).toBeCloseTo(-3.48, 10);
  });
});

describe('notes say what limits an answer', () => {
  const notes = (input: object) => outputOf(woodMovementCalculation, { ...board, ...input }, context).notes;
  test('nothing where nothing does', () => expect(notes({})).toEqual([]));
  test('moistures outside the coefficients', () => {
    expect(notes({ fromMoisturePercent: 18 }).join()).toContain('6 to 14 %');
    expect(notes({ fromMoisturePercent: 18, method: 'shrinkage' })).toEqual([]);
  });
  test('green wood', () => {
    const input = { fromMoisturePercent: 80, method: 'shrinkage' };
    expect(notes(input).join()).toContain('Above 30 %');
    // By table 4-3: 7.8 % of the green width, 23/30 of it.
    expect(outputOf(woodMovementCalculation, { ...board, ...input }, context).changeMm).toBeCloseTo(
      -300 * 0.078 * (23 / 30),
      10,
    );
  });
  test('figures worked out, and tables that differ', () => {
    expect(notes({ wood: 'sapele' }).join()).toContain('No table prints the coefficient');
    expect(notes({ wood: 'apple', method: 'shrinkage' }).join()).toContain('No table prints the shrinkage');
    expect(notes({ wood: 'mahogany-true' }).join()).toContain('show both');
  });
});

describe('bad input gives one plain sentence that says what to do', () => {
  const round = { wood: 'mahogany-true', cut: 'flat-sawn', alongMm: 800, acrossMm: 790, sigmaMm: 1 };
  test.each<[string, object, string, string]>([
    [
      'wood.moisture',
      { temperatureC: 20, relativeHumidityPercent: 120 },
      'relativeHumidityPercent',
      'from 0 to 95 %',
    ],
    [
      'wood.moisture',
      { temperatureC: -40, relativeHumidityPercent: 50 },
      'temperatureC',
      'from −1.2 to 60.1 °C',
    ],
    ['wood.movement', { ...board, wood: 'plywood' }, 'wood', 'list: take an id from woods.yaml'],
    ['wood.movement', { ...board, wood: 'Honduras mahogany' }, 'wood', 'take one of mahogany-true'],
    ['wood.movement', { ...board, widthMm: -3 }, 'widthMm', 'a number above 0'],
    ['wood.movement', { ...board, cut: undefined }, 'cut', 'Say how the wood was cut'],
    ['wood.movement', { ...board, cut: 'rift' }, 'cut', 'flat-sawn, quarter-sawn'],
    ['wood.movement', { ...board, wood: undefined }, 'wood', 'Say which wood'],
    ['wood.movement', { ...board, C: 0.002 }, 'wood', 'not both'],
    ['wood.roundness', { ...round, acrossMm: 500 }, 'acrossMm', 'measure again'],
    ['wood.roundness', { ...round, indoors: 'the-moon' }, 'indoors', 'us-most'],
    ['wood.roundness', { ...round, sigmaMm: -1 }, 'sigmaMm', 'at least 0'],
  ])('%s %o', (id, input, path, words) => {
    const found = faults(id, input);
    expect(found).toHaveLength(1);
    expect(found[0]?.path).toBe(path);
    expect(found[0]?.message).toContain(words);
    expect(found[0]?.message).toMatch(/^[^.]*([.][^ ][^.]*)*\.$/);
  });

  test('a name that is nearly right brings the ids near it', () => {
    expect(faults('wood.movement', { ...board, wood: 'red alder' })[0]?.message).toContain(
      'take one of alder-red',
    );
  });
});

describe('wood.roundness', () => {
  const top = { wood: 'cherry-black', cut: 'flat-sawn', alongMm: 900, sigmaMm: 0.5 };
  const roundness = (input: object) => outputOf(woodRoundness, { ...top, ...input }, context);

  test('expects of an old top what movement from air-dried to indoors would take from it', () => {
    const { expectedOld, expectedNew } = roundness({ acrossMm: 890 });
    // By hand: 900 mm · 0.00248 · (15 − 8) and · (7 − 8).
    expect(expectedOld.meanMm).toBeCloseTo(900 * 0.00248 * 7, 1);
    expect(expectedNew.meanMm).toBeCloseTo(-900 * 0.00248, 1);
    expect(expectedOld.sdMm).toBeGreaterThan(expectedNew.sdMm);
  });

  test('a shrunken top speaks for old, a round one for recent, neither beyond what one measure can bear', () => {
    const shrunken = roundness({ acrossMm: 885 });
    const round = roundness({ acrossMm: 900 });
    expect(shrunken.differenceMm).toBe(15);
    expect(shrunken.likelihoodRatio).toBeGreaterThan(10);
    expect(shrunken.likelihoodRatio).toBeLessThan(1000);
    expect(round.likelihoodRatio).toBeLessThan(0.3);
    expect(round.likelihoodRatio).toBeGreaterThan(0.001);
  });

  test('a careless measure says less', () => {
    const ratio = (sigmaMm: number) => Math.log(roundness({ acrossMm: 885, sigmaMm }).likelihoodRatio);
    expect(ratio(20)).toBeLessThan(ratio(5));
    expect(ratio(5)).toBeLessThan(ratio(0.5));
    expect(Math.abs(ratio(100))).toBeLessThan(0.2);
  });

  test('with the same moisture at making, long ago and recently, it says nothing', () => {
    const same = { mean: 10, sd: 1 };
    const { likelihoodRatio } = roundness({
      acrossMm: 890,
      moistureAtMaking: same,
      moistureAtMakingRecent: same,
    });
    expect(likelihoodRatio).toBeCloseTo(1, 12);
  });

  test('a turned leg goes out of round far less than a top of the same width', () => {
    const leg = roundness({ acrossMm: 890, part: 'turning', cut: undefined }).expectedOld.meanMm;
    expect(leg).toBeCloseTo(900 * (0.00248 - 0.00126) * 7, 1);
    expect(leg).toBeLessThan(roundness({ acrossMm: 890 }).expectedOld.meanMm);
  });

  test('in a damp house it has lost less', () => {
    const meanMm = (indoors: string) => roundness({ acrossMm: 890, indoors }).expectedOld.meanMm;
    expect(meanMm('britain-seldom-heated')).toBeLessThan(meanMm('us-most'));
    expect(meanMm('us-most')).toBeLessThan(meanMm('us-dry-southwest'));
  });
});
