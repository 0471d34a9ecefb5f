import { expect, it } from 'vitest';
import { askedOf } from './askedOf.ts';

const chair = { id: 'windsor-chair', family: 'seating', alterations: ['arms-added'] } as const;
const chest = { id: 'chest-of-drawers', family: 'case', alterations: [] } as const;

it('asks a sign only of the kinds of part it can be on', () => {
  const sign = { on: ['drawer'], hangsOn: 'tooling' } as const;
  expect(askedOf({ ...sign, on: ['drawer'] }, 'drawer', { ...chest, alterations: [] })).toBe(true);
  expect(askedOf({ ...sign, on: ['drawer'] }, 'whole', { ...chest, alterations: [] })).toBe(false);
});

it('asks a sign that names families of furniture of those only', () => {
  const rake = { on: ['whole'], hangsOn: 'making' as const, formFamilies: ['seating' as const] };
  expect(askedOf(rake, 'whole', { ...chair, alterations: [] })).toBe(true);
  expect(askedOf(rake, 'whole', { ...chest, alterations: [] })).toBe(false);
});

it('asks a sign of an alteration only where the form is prone to it', () => {
  const narrow = { on: ['whole'], hangsOn: 'alteration/arms-added' as const };
  expect(askedOf(narrow, 'whole', { ...chair, alterations: ['arms-added'] })).toBe(true);
  expect(askedOf(narrow, 'whole', { ...chest, alterations: ['cut-down'] })).toBe(false);
});

it('does not ask a form that cannot show the sign, though its parts are of the kind', () => {
  const centred = { on: ['side-stretcher'], hangsOn: 'making' as const, notForms: ['windsor-chair'] };
  const form = { family: 'seating' as const, alterations: [] };
  expect(askedOf(centred, 'side-stretcher', { ...form, id: 'windsor-chair' })).toBe(false);
  expect(askedOf(centred, 'side-stretcher', { ...form, id: 'side-chair' })).toBe(true);
});
