import { describe, expect, test } from 'vitest';
import described from '../../../test/reference/describedValues.json' with { type: 'json' };
import profiles from '../../../test/reference/profiles.json' with { type: 'json' };
import type { CalculationContext } from '../define.ts';
import { runById } from '../runById.ts';
import { outputOf } from '../testing/outputOf.ts';
import { photoProfile } from './photoProfile.ts';

// Values and their sources: test/reference/profiles.json and describedValues.json.

const run = (input: unknown) => runById('photo.profile', input, { yearNow: 2026 } as CalculationContext);

describe('values from outside', () => {
  test.each(profiles.profiles)('$id', (each) => {
    const { profile } = outputOf(photoProfile, {
      profile: { values: each.profile, stepMm: each.stepMm },
    });
    expect(Math.abs((profile?.pitchMm as number) - each.truePeriodMm)).toBeLessThanOrEqual(
      each.periodToleranceMm,
    );
    expect(Math.abs((profile?.fisherG as number) - each.fisherG)).toBeLessThanOrEqual(each.tolerance);
    expect(Math.abs((profile?.chance as number) - each.chance)).toBeLessThanOrEqual(each.tolerance);
  });

  test('places of saw marks', () => {
    const { placesMm, periods, spacing, tolerance } = described.rayleigh;
    const { marks } = outputOf(photoProfile, {
      marks: { placesMm, periodsMm: periods.map(({ periodMm }) => periodMm) },
    });
    const near = (found: object, wanted: object) => {
      for (const [name, value] of Object.entries(wanted))
        expect(
          Math.abs(((found as Record<string, number>)[name] as number) - value),
          name,
        ).toBeLessThanOrEqual(tolerance);
    };
    near(marks?.spacing ?? {}, spacing);
    for (const [at, wanted] of periods.entries()) near(marks?.periods[at] ?? {}, wanted);
  });
});

describe('bad input gives one plain sentence that says what to do', () => {
  const level = Array.from({ length: 20 }, () => 1);
  test.each<[object, string, string]>([
    [{}, '', 'give a profile'],
    [{ profile: { values: [1, 2], stepMm: 0.1 } }, 'profile.values', 'at least 16'],
    [{ profile: { values: level, stepMm: 0.1 } }, 'profile.values', 'across the marks'],
    [{ marks: { placesMm: [1, 1] } }, 'marks.placesMm', 'once'],
    [
      { profile: { values: [...level, 2], stepMm: 0.1, betweenMm: [0.1, 1] } },
      'profile.betweenMm',
      'within them',
    ],
  ])('%o', (input, path, words) => {
    const result = run(input);
    if (result.ok) throw new Error('no fault');
    expect(result.faults).toHaveLength(1);
    expect(result.faults[0]?.path).toBe(path);
    expect(result.faults[0]?.message).toContain(words);
  });
});
