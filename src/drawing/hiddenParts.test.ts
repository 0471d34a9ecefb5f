import { describe, expect, it } from 'vitest';
import { form as formShape } from '../knowledge/schema.ts';
import { drawForm } from './drawForm.ts';
import { allForms } from './testing/allForms.ts';
import { hiddenParts } from './testing/hiddenParts.ts';
import { spreadChoices } from './testing/spreadChoices.ts';

const forms = await allForms();

describe('a part in the drawing', () => {
  it.each(forms.map((form) => [form.id, form] as const))(
    'of the form %s can be touched',
    (_, form) => {
      for (const features of spreadChoices(form))
        expect(hiddenParts(drawForm(form, features, {})), JSON.stringify(features)).toEqual([]);
    },
    30_000,
  );

  it('that lies behind another is found out', () => {
    const covered = formShape.parse({
      id: 'board',
      name: 'Board',
      family: 'table',
      sides: 'facing',
      what: 'A board before another.',
      styleSpan: [1700, 1800],
      parts: [
        { id: 'front', kind: 'top', name: 'front', renewed: '5, 2–10' },
        { id: 'behind', kind: 'top', name: 'behind', renewed: '5, 2–10' },
      ],
      measures: [{ id: 'height', name: 'height', how: 'Up.', typicalMm: 400, lowMm: 300, highMm: 500 }],
      drawing: [
        { part: 'behind', view: 'front', path: 'R 10 10 50 50' },
        { part: 'front', view: 'front', path: 'R 0 0 100 height' },
      ],
    });
    expect(hiddenParts(drawForm(covered, {}, {}))).toEqual(['behind']);
  });
});
