import { expectTypeOf, test } from 'vitest';
import type { Weighing } from '../weighing/weighing.ts';
import type { CalculationContext, CalculationResult } from './define.ts';
import type { evidenceWeigh } from './evidence.ts';
import type { photoTwins } from './photoTwins.ts';
import type { calculations } from './registry.ts';
import { runById } from './runById.ts';
import { type OutputOf, runCalculation } from './runCalculation.ts';
import { setsSize } from './sets.ts';
import { woodRoundness } from './woodRoundness.ts';

// Held by the compiler (`npm run types`): each line fails to compile once a calculation loses its types at the door.
declare const context: CalculationContext;

test('a calculation run as a value answers with the type of its own schema', () => {
  const size = () => runCalculation(setsSize, { numbersSeen: [3, 7, 11] }, context);
  expectTypeOf(size).returns.toEqualTypeOf<CalculationResult<OutputOf<typeof setsSize>>>();
  expectTypeOf<OutputOf<typeof setsSize>['p90']>().toEqualTypeOf<[number, number]>();
  expectTypeOf<OutputOf<typeof photoTwins>['better']>().toEqualTypeOf<'plain' | 'mirrored' | 'alike'>();
  expectTypeOf<OutputOf<typeof evidenceWeigh>>().toEqualTypeOf<Weighing>();
});

test('an input that does not fit is refused by the compiler', () => {
  // @ts-expect-error a name is not a number
  void (() => runCalculation(setsSize, { numbersSeen: ['III'] }, context));
  // @ts-expect-error the size across the grain is missing
  void (() => runCalculation(woodRoundness, { wood: 'oak-white', alongMm: 800, sigmaMm: 1 }, context));
  // @ts-expect-error a calculation is no longer asked for by its id
  void (() => runCalculation('sets.size', { numbersSeen: [3] }, context));
});

test('only by id are input and output unknown', () => {
  expectTypeOf(runById).parameter(1).toBeUnknown();
  expectTypeOf(runById).returns.toEqualTypeOf<CalculationResult<unknown>>();
  expectTypeOf<(typeof calculations)[number]['answer']>().parameter(0).toBeUnknown();
});
