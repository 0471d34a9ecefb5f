import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { form as formShape } from '../knowledge/schema.ts';
import { type Drawing, drawForm, type ViewId } from './drawForm.ts';
import type { Box } from './extentOf.ts';
import { partsOf } from './partsOf.ts';
import { allForms, featureChoices } from './testing/allForms.ts';
import { hiddenParts } from './testing/hiddenParts.ts';
import { sizesOf } from './testing/sizesOf.ts';
import { spreadChoices } from './testing/spreadChoices.ts';
import { usualSizes } from './usualSizes.ts';

const forms = await allForms();

describe.each(forms.map((form) => [form.id, form] as const))('the drawing of the form %s', (_, form) => {
  it('has no fault, shows every part where it can be touched, and is as large as the usual measures say, with any features', () => {
    for (const features of spreadChoices(form)) {
      const said = JSON.stringify(features);
      const usual = usualSizes(form, features);
      const drawing = drawForm(form, features, {});
      const { views, faults } = drawing;
      expect(faults, said).toEqual([]);
      expect(hiddenParts(drawing), said).toEqual([]);
      const shown = new Set(views.flatMap((view) => view.shapes.map((shape) => shape.part)));
      expect([...shown].sort(), said).toEqual(
        partsOf(form, features)
          .map((part) => part.id)
          .sort(),
      );
      const { front, side, underside } = extentsOf(views);
      within(1, front[3], usual.height, said);
      if (side !== undefined) within(1, side[3], usual.height, said);
      within(1, front[2], usual.width, said);
      if (side !== undefined) within(1, side[2], usual.depth, said);
      if (underside === undefined) continue;
      within(1, underside[2], usual.width, said);
      within(1, underside[3], usual.depth, said);
    }
  });

  it('is as high, wide and deep as taken, at any size of the range that one piece can have', () => {
    fc.assert(
      fc.property(sizesOf(form), fc.constantFrom(...featureChoices(form)), (sizes, features) => {
        const { front, side, underside } = extentsOf(drawForm(form, features, sizes).views);
        const said = JSON.stringify({ sizes, features });
        within(1, front[3], sizes.height, said);
        if (side !== undefined) within(1, side[2], sizes.depth, said);
        if (underside !== undefined) within(1, underside[3], sizes.depth, said);
        if (underside !== undefined) within(1, front[2], underside[2], said);
        if (form.id !== 'side-chair') within(1, front[2], sizes.width, said);
      }),
      { seed: 1745, numRuns: 12, endOnFailure: true },
    );
  });

  it('puts every label inside its view', () => {
    for (const view of drawForm(form, {}, {}).views) {
      const [left, top, width, height] = view.box;
      for (const { part, label } of view.shapes) {
        expect(label[0] >= left && label[0] <= left + width, part).toBe(true);
        expect(label[1] >= top && label[1] <= top + height, part).toBe(true);
      }
    }
  });
});

function extentsOf(views: Drawing['views']) {
  return Object.fromEntries(views.map(({ view, extent }) => [view, extent])) as Record<'front', Box> &
    Partial<Record<ViewId, Box>>;
}

function within(mm: number, drawn: number | undefined, asked: number | undefined, said: string) {
  expect(
    Math.abs((drawn ?? Number.NaN) - (asked ?? Number.NaN)),
    `${drawn} for ${asked} with ${said}`,
  ).toBeLessThan(mm);
}

describe('a form whose drawing has faults', () => {
  const stool = formShape.parse({
    id: 'stool',
    name: 'Stool',
    family: 'seating',
    sides: 'seated',
    what: 'A seat without a back.',
    styleSpan: [1700, 1800],
    parts: [
      { id: 'leg-left', kind: 'front-leg', name: 'left leg', renewed: '5, 2–10' },
      { id: 'leg-right', kind: 'front-leg', name: 'right leg', renewed: '5, 2–10' },
    ],
    measures: [{ id: 'seat-height', name: 'height', how: 'Up.', typicalMm: 400, lowMm: 300, highMm: 500 }],
    lengths: { half: 'seatHeight/2', seatHeight: '3', odd: 'half+nothing' },
    drawing: [
      { part: 'leg-left', view: 'front', path: 'M 100 0 L 140 0 140 half 100 half Z', mirror: true },
      { part: 'leg-left', view: 'side', path: 'M 0 0 L 40 0 40 half Z', mirror: true },
      { part: 'leg-left', view: 'underside', path: 'M 0 0 X 3' },
    ],
  });
  const drawing = drawForm(stool, {}, { 'seat-height': 500 });

  it('draws what can be drawn, the other of a pair on the other side', () => {
    expect(drawing.views.map(({ view, extent }) => [view, extent])).toEqual([
      ['front', [-140, -250, 280, 250]],
    ]);
    expect(drawing.views[0]?.shapes.map(({ part, label }) => [part, Math.sign(label[0])])).toEqual([
      ['leg-left', 1],
      ['leg-right', -1],
    ]);
  });

  it('tells each fault with its place', () => {
    expect(drawing.faults.map(({ code, at }) => [code, at])).toEqual([
      ['drawing.name-twice', 'length seatHeight'],
      ['drawing.length-unreadable', 'length odd'],
      ['drawing.mirror-in-side-view', 'leg-left, side'],
      ['drawing.path-unreadable', 'leg-left, underside'],
    ]);
  });
});
