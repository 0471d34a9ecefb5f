import { alteration, form, type Knowledge, shop, sign } from '../../knowledge/schema.ts';
import { smallMaking } from './smallMaking.ts';

/** A made-up body of knowledge, small enough to be summed in every other way too. Its figures mean nothing. */
export function smallKnowledge(): Knowledge {
  const why = { by: 'judgement' as const, why: 'Made up for checking sums.' };
  const byId = <T extends { id: string }>(all: T[]): Record<string, T> =>
    Object.fromEntries(all.map((each) => [each.id, each]));
  const signs = [
    {
      id: 'centred',
      hangsOn: 'making',
      on: ['rail', 'leg'],
      shows: {
        period: '3, 1–5',
        'bench-copy': '40, 30–50',
        'machine-copy': '60, 50–70',
        'to-deceive': '12, 5–20',
      },
    },
    {
      id: 'odd-joint',
      hangsOn: 'making',
      on: ['rail'],
      group: 'joint',
      needs: 'turned-over',
      shows: {
        period: '2, 1–4',
        'bench-copy': '20, 10–30',
        'machine-copy': '5, 2–10',
        'to-deceive': '9, 4–20',
        later: '33, 20–40',
      },
    },
    {
      id: 'odd-joint-twin',
      hangsOn: 'making',
      on: ['rail'],
      group: 'joint',
      shows: {
        period: '4, 1–6',
        'bench-copy': '25, 10–30',
        'machine-copy': '7, 2–10',
        'to-deceive': '8, 4–20',
      },
    },
    {
      id: 'saw-arcs',
      hangsOn: 'tooling',
      on: ['rail', 'leg'],
      shows: { hand: '1, 0.5–2', 'early-machine': '45, 30–60', 'modern-machine': '30, 20–40' },
    },
    {
      id: 'plane-tracks',
      hangsOn: 'tooling',
      on: ['rail', 'leg'],
      shows: { hand: '55, 40–70', 'early-machine': '8, 4–12', 'modern-machine': '3, 1–5' },
    },
    {
      id: 'sander-swirl',
      hangsOn: 'tooling',
      on: ['rail', 'leg'],
      shows: { hand: '0.5, 0.1–2', 'early-machine': '3, 1–6', 'modern-machine': '35, 20–50' },
      campaign: { kind: 'dressed-anew', shows: '30, 20–40' },
    },
    {
      id: 'new-glue',
      hangsOn: 'part-year',
      on: ['rail', 'leg'],
      span: { earliest: 1880, commonFrom: 1930, hardFloor: true },
      shows: { 'in-use': '50, 40–60', 'out-of-use': '2, 1–3' },
      campaign: { kind: 'glued-anew', shows: '55, 40–70' },
    },
    {
      id: 'darkened',
      hangsOn: 'ageing',
      on: ['rail', 'leg'],
      shows: { natural: '85, 70–95', none: '5, 2–10', imitated: '40, 20–60' },
    },
    {
      id: 'worn',
      hangsOn: 'use',
      on: ['leg'],
      shows: { natural: '80, 70–90', none: '6, 2–10', imitated: '55, 30–70' },
    },
    {
      id: 'late-screw',
      hangsOn: 'part-year',
      on: ['rail'],
      span: { earliest: 1840, commonFrom: 1880, hardFloor: true },
      shows: { 'in-use': '50, 40–60', 'out-of-use': '2, 1–3' },
    },
    {
      id: 'early-nail',
      hangsOn: 'part-year',
      on: ['leg'],
      span: { earliest: 1600, commonFrom: 1600, commonUntil: 1800, latest: 1900 },
      shows: { 'in-use': '40, 30–60', 'out-of-use': '3, 1–5' },
    },
    {
      id: 'odd-holes',
      hangsOn: 'origin',
      on: ['rail', 'leg'],
      shows: { 'of-the-making': '3, 1–5', repair: '6, 3–9', improve: '8, 4–12', 'other-old': '60, 40–80' },
    },
    {
      id: 'cuff',
      hangsOn: 'alteration/legs-replaced',
      on: ['leg'],
      shows: { happened: '60, 40–80', not: '2, 1–4' },
    },
    {
      id: 'mismatch',
      hangsOn: 'alteration/made-up',
      on: ['whole'],
      shows: { happened: '70, 50–85', not: '5, 2–8' },
    },
    {
      id: 'scraped',
      hangsOn: 'alteration/refinished',
      on: ['finish'],
      shows: { happened: '60, 40–80', not: '6, 2–8' },
    },
    {
      id: 'late-line',
      hangsOn: 'year',
      on: ['whole'],
      span: { earliest: 1740, commonFrom: 1780 },
      shows: { 'in-use': '60, 40–80', 'out-of-use': '10, 5–20' },
    },
  ].map((each) => ({
    ...sign.parse({
      name: `Sign ${each.id}`,
      look: 'Look.',
      minutes: 1,
      basis: why,
      inPhoto: 'clear',
      ...each,
    }),
    family: 'made-up',
  }));
  return {
    version: 'small',
    families: [{ id: 'made-up', name: 'Made up', signs: signs.map((each) => each.id) }],
    signs: byId(signs),
    forms: byId([
      form.parse({
        id: 'bench',
        name: 'Bench',
        family: 'seating',
        sides: 'seated',
        what: 'A made-up bench.',
        styleSpan: [1700, 1790],
        parts: [
          { id: 'rail', kind: 'rail', name: 'rail', renewed: '6, 3–9' },
          { id: 'leg-left', kind: 'leg', name: 'left leg', renewed: '9, 5–15' },
          { id: 'leg-right', kind: 'leg', name: 'right leg', renewed: '9, 5–15' },
          { id: 'finish', kind: 'finish', name: 'finish', structural: false, renewed: '70, 50–90' },
        ],
        alterations: ['legs-replaced', 'rail-improved', 'refinished', 'made-up'],
        measures: [],
        drawing: [],
      }),
    ]),
    alterations: byId(
      [
        {
          id: 'legs-replaced',
          class: 'repair',
          happened: { period: '12, 8–20', later: '3, 1–5', 'to-deceive': '40, 20–60' },
          changes: { leg: { to: 'repair', in100: '70, 50–90' } },
        },
        {
          id: 'rail-improved',
          class: 'improve',
          earliest: 1860,
          happened: { period: '8, 4–12', later: '2, 1–5', 'to-deceive': '30, 20–50' },
          changes: {
            rail: { to: 'improve', in100: '80, 60–90' },
            leg: { to: 'improve', in100: '20, 10–30' },
          },
        },
        {
          id: 'refinished',
          class: 'upkeep',
          happened: { period: '60, 40–80', later: '30, 20–40' },
          changes: { finish: { to: 'repair', in100: '90, 80–95' } },
        },
        {
          id: 'made-up',
          class: 'make-up',
          happened: { period: '5, 2–8', later: '1, 0.5–2', 'to-deceive': '20, 10–30' },
          changes: {
            rail: { to: 'other-old', in100: '50, 30–70' },
            leg: { to: 'other-old', in100: '60, 30–70' },
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
      ),
    ),
    shops: byId([
      shop.parse({
        id: 'north',
        name: 'North',
        kind: 'workshop',
        invented: true,
        place: 'Northam',
        placeWords: ['Northam'],
        years: [1740, 1790],
        forms: ['bench'],
        share: '5, 2–9',
        what: 'Odd joints.',
        habits: [{ sign: 'odd-joint', shows: '92, 80–97' }],
        basis: why,
      }),
      shop.parse({
        id: 'south',
        name: 'South',
        kind: 'region',
        place: 'Southam',
        years: [1700, 1770],
        forms: ['bench'],
        share: '8, 2–12',
        what: 'Centered.',
        habits: [{ sign: 'centred', on: ['leg'], shows: '30, 20–40' }],
        basis: why,
      }),
    ]),
    making: smallMaking(),
    woods: {},
    sources: {},
  };
}
