import { alteration, form, type Knowledge } from '../../knowledge/schema.ts';
import { smallKnowledge } from './smallKnowledge.ts';

/** The kinds of part of the made-up chest that bear the signs of each kind of the made-up bench. */
const bearsAlso: Record<string, readonly string[]> = { rail: ['top', 'side'], leg: ['drawer', 'runner'] };

/**
 * The made-up body of knowledge with a chest in it: several make-ups that touch the same and different parts, parts that
 * more than one alteration can have changed, and a structural part renewed in upkeep. Its figures mean nothing.
 */
export function chestKnowledge(): Knowledge {
  const small = smallKnowledge();
  const why = { by: 'judgement' as const, why: 'Made up for checking sums.' };
  const signs = Object.fromEntries(
    Object.entries(small.signs).map(([id, sign]) => [
      id,
      { ...sign, on: sign.on.flatMap((kind) => [kind, ...(bearsAlso[kind] ?? [])]) },
    ]),
  );
  const alterations = [
    {
      id: 'top-replaced',
      class: 'repair',
      happened: { period: '11, 8–20', later: '3, 1–5' },
      changes: { top: { to: 'repair', in100: '90, 80–95' } },
    },
    {
      id: 'drawers-converted',
      class: 'improve',
      earliest: 1860,
      happened: { period: '8, 4–12', later: '2, 1–5' },
      changes: {
        drawer: { to: 'improve', in100: '70, 50–90' },
        top: { to: 'repair', in100: '25, 10–30' },
      },
    },
    {
      id: 'runners-renewed',
      class: 'upkeep',
      happened: { period: '50, 40–60', later: '20, 10–30' },
      changes: { runner: { to: 'repair', in100: '80, 70–90' }, drawer: { to: 'repair', in100: '5, 2–8' } },
    },
    {
      id: 'case-married',
      class: 'make-up',
      happened: { period: '6, 2–8', later: '1, 0.5–2' },
      changes: {
        side: { to: 'other-old', in100: '95, 90–98' },
        top: { to: 'other-old', in100: '40, 30–70' },
      },
    },
    {
      id: 'top-from-another',
      class: 'repair',
      happened: { period: '4, 2–8', later: '1, 0.5–2' },
      changes: { top: { to: 'other-old', in100: '97, 90–99' } },
    },
    {
      id: 'rebuilt-from-old',
      class: 'make-up',
      happened: { period: '3, 1–5', later: '2, 0.5–3' },
      changes: {
        drawer: { to: 'other-old', in100: '60, 40–70' },
        side: { to: 'improve', in100: '30, 20–40' },
      },
    },
  ].map((each) =>
    alteration.parse({
      name: `Alteration ${each.id}`,
      what: 'What.',
      honestContrast: 'No.',
      tellOwner: 'Tell.',
      desirability: 'Less.',
      basis: why,
      ...each,
    }),
  );
  const chest = form.parse({
    id: 'chest',
    name: 'Chest',
    family: 'case',
    sides: 'facing',
    what: 'A made-up chest.',
    styleSpan: [1700, 1790],
    parts: [
      { id: 'top', kind: 'top', name: 'top', renewed: '5, 3–9' },
      { id: 'side', kind: 'side', name: 'side', renewed: '2, 1–4' },
      { id: 'drawer-1', kind: 'drawer', name: 'upper drawer', renewed: '7, 4–11' },
      { id: 'drawer-2', kind: 'drawer', name: 'lower drawer', renewed: '7, 4–11' },
      { id: 'runner', kind: 'runner', name: 'runner', renewed: '30, 20–40' },
    ],
    alterations: alterations.map((each) => each.id),
    measures: [],
    drawing: [],
  });
  return {
    ...small,
    signs,
    forms: { ...small.forms, chest },
    alterations: { ...small.alterations, ...Object.fromEntries(alterations.map((each) => [each.id, each])) },
    shops: Object.fromEntries(
      Object.entries(small.shops).map(([id, shop]) => [
        id,
        {
          ...shop,
          forms: [...shop.forms, 'chest'],
          habits: shop.habits.map((habit) =>
            habit.on === undefined ? habit : { ...habit, on: [...habit.on, 'drawer'] },
          ),
        },
      ]),
    ),
  };
}
