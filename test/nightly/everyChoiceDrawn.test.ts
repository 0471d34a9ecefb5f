import { expect, it } from 'vitest';
import { drawForm } from '../../src/drawing/drawForm.ts';
import { partsOf } from '../../src/drawing/partsOf.ts';
import { allForms, featureChoices } from '../../src/drawing/testing/allForms.ts';
import { hiddenParts } from '../../src/drawing/testing/hiddenParts.ts';

// The ordinary run tries choices among which every two options meet (src/drawing/testing/spreadChoices.ts); here every way to choose.
it.each((await allForms()).map((form) => [form.id, form] as const))(
  'the form %s is drawn whole, with no part covered, however its features are chosen',
  (_, form) => {
    for (const features of featureChoices(form)) {
      const said = JSON.stringify(features);
      const drawing = drawForm(form, features, {});
      expect(drawing.faults, said).toEqual([]);
      expect(hiddenParts(drawing), said).toEqual([]);
      const shown = new Set(drawing.views.flatMap((view) => view.shapes.map((shape) => shape.part)));
      expect(
        partsOf(form, features).filter(({ id }) => !shown.has(id)),
        said,
      ).toEqual([]);
    }
  },
  120_000,
);
