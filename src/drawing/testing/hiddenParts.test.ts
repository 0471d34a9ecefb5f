import { expect, it } from 'vitest';
import { form as formShape } from '../../knowledge/schema.ts';
import { drawForm } from '../drawForm.ts';
import { hiddenParts } from './hiddenParts.ts';

it('finds a part that lies behind another in every view', () => {
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
