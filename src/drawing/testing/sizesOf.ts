import fc from 'fast-check';
import type { Form } from '../../knowledge/schema.ts';
import { canBe } from './canBe.ts';

/** Sizes within the form's ranges that one piece can have at once. */
export function sizesOf(form: Form): fc.Arbitrary<Record<string, number>> {
  const size = ({ lowMm, highMm }: Form['measures'][number]) =>
    fc.double({ min: lowMm, max: highMm, noNaN: true });
  return fc
    .record(Object.fromEntries(form.measures.map((measure) => [measure.id, size(measure)])))
    .filter((sizes) => canBe(form.id, sizes));
}
