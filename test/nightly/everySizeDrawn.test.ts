import fc from 'fast-check';
import { expect, it } from 'vitest';
import { drawForm } from '../../src/drawing/drawForm.ts';
import { allForms, featureChoices } from '../../src/drawing/testing/allForms.ts';
import { sizesOf } from '../../src/drawing/testing/sizesOf.ts';

// The ordinary run tries a dozen drawn sizes of each form (src/drawing/drawForm.test.ts); here two hundred others.
it.each((await allForms()).map((form) => [form.id, form] as const))(
  'the form %s is drawn as high, wide and deep as it was measured',
  (_, form) => {
    const off = (drawn: number | undefined, asked: number | undefined) =>
      drawn === undefined ? 0 : Math.abs(drawn - (asked ?? Number.NaN));
    fc.assert(
      fc.property(sizesOf(form), fc.constantFrom(...featureChoices(form)), (sizes, features) => {
        const { views, faults } = drawForm(form, features, sizes);
        expect(faults).toEqual([]);
        const extent = (name: string) => views.find(({ view }) => view === name)?.extent;
        expect(off(extent('front')?.[3], sizes.height)).toBeLessThan(1);
        expect(off(extent('side')?.[2], sizes.depth)).toBeLessThan(1);
        expect(off(extent('underside')?.[3], sizes.depth)).toBeLessThan(1);
      }),
      { seed: 1886, numRuns: 200, endOnFailure: true },
    );
  },
  120_000,
);
