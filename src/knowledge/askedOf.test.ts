import { expect, it } from 'vitest';
import { askedOf } from './askedOf.ts';

const chair = { id: 'windsor-chair', family: 'seating', alterations: ['arms-added'], features: [] } as const;
const chest = { id: 'chest-of-drawers', family: 'case', alterations: [], features: [] } as const;

it('asks a sign only of the kinds of part it can be on', () => {
  const sign = { on: ['drawer'], hangsOn: 'tooling' } as const;
  expect(askedOf({ ...sign, on: ['drawer'] }, 'drawer', { ...chest, alterations: [], features: [] })).toBe(
    true,
  );
  expect(askedOf({ ...sign, on: ['drawer'] }, 'whole', { ...chest, alterations: [], features: [] })).toBe(
    false,
  );
});

it('asks a sign that names families of furniture of those only', () => {
  const rake = { on: ['whole'], hangsOn: 'making' as const, formFamilies: ['seating' as const] };
  expect(askedOf(rake, 'whole', { ...chair, alterations: [], features: [] })).toBe(true);
  expect(askedOf(rake, 'whole', { ...chest, alterations: [], features: [] })).toBe(false);
});

it('asks a sign of an alteration only where the form is prone to it', () => {
  const narrow = { on: ['whole'], hangsOn: 'alteration/arms-added' as const };
  expect(askedOf(narrow, 'whole', { ...chair, alterations: ['arms-added'], features: [] })).toBe(true);
  expect(askedOf(narrow, 'whole', { ...chest, alterations: ['cut-down'], features: [] })).toBe(false);
});

it('does not ask a form that cannot show the sign, though its parts are of the kind', () => {
  const centred = { on: ['side-stretcher'], hangsOn: 'making' as const, notForms: ['windsor-chair'] };
  const form = { family: 'seating' as const, alterations: [], features: [] };
  expect(askedOf(centred, 'side-stretcher', { ...form, id: 'windsor-chair' })).toBe(false);
  expect(askedOf(centred, 'side-stretcher', { ...form, id: 'side-chair' })).toBe(true);
});

it('is not asked where what is known of the piece rules it out, and is where nothing is known', () => {
  const legs = {
    id: 'legs',
    name: 'Legs',
    options: [
      { id: 'straight', name: 'Straight', makes: { leg: { turned: false } } },
      { id: 'turned', name: 'Turned', makes: { leg: { turned: true } } },
    ],
  };
  const table = { id: 'card-table', family: 'table' as const, alterations: [], features: [legs] };
  const sign = { on: ['leg'], hangsOn: 'ageing' as const };
  const round = { ...sign, on: ['leg', 'pillar'], make: 'turned' as const };
  const leg = { id: 'leg-1', kind: 'leg' };
  expect(askedOf(round, leg, table)).toBe(true);
  // The first choice holds where none was made.
  expect(askedOf(round, leg, table, { features: {} })).toBe(false);
  expect(askedOf(round, leg, table, { features: { legs: 'turned' } })).toBe(true);
  expect(askedOf(round, { id: 'pillar', kind: 'pillar' }, table, { features: {} })).toBe(true);
  // What is said of the part goes before the choice.
  expect(askedOf(round, leg, table, { features: {}, makes: { 'leg-1': { turned: true } } })).toBe(true);
  expect(
    askedOf(round, leg, table, { features: { legs: 'turned' }, makes: { 'leg-1': { turned: false } } }),
  ).toBe(false);
  // A form may settle it whatever is chosen.
  expect(askedOf(round, 'pillar', { ...table, makes: { pillar: { turned: false } } }, { features: {} })).toBe(
    false,
  );
  const knees = { ...sign, on: ['leg'], when: { legs: ['cabriole'], feet: ['claw'] } };
  expect(askedOf(knees, leg, table, { features: {} })).toBe(false);
  // A form without the feature is not held by it.
  expect(askedOf({ ...knees, when: { feet: ['claw'] } }, leg, table, { features: {} })).toBe(true);
});
