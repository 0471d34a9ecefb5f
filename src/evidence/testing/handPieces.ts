import { alteration, type Form, type Knowledge, shop, sign } from '../../knowledge/schema.ts';
import { handKnowledge } from './handKnowledge.ts';

const basis = { by: 'judgement' as const, why: 'Made up for checking sums.' };
const exactly = (in100: number) => `${in100}, ${in100}–${in100}`;
const all = (shares: Record<string, number>) =>
  Object.fromEntries(Object.entries(shares).map(([name, share]) => [name, exactly(share)]));

/** A sign that so many of 100 show in each state of what it hangs on. */
export function signOf(id: string, hangsOn: string, shares: Record<string, number>) {
  const read = sign.parse({
    id,
    name: `Sign ${id}`,
    look: 'Look.',
    minutes: 1,
    on: ['whole', 'board'],
    hangsOn,
    basis,
    shows: all(shares),
  });
  return { ...read, family: 'made-up' };
}
/** A sign of the maker’s ways, on so many of 100 pieces of the period and of each later kind. */
export const makingSign = (id: string, period: number, later: number) =>
  signOf(id, 'making', { period, 'bench-copy': later, 'machine-copy': later, 'to-deceive': later });

/** A shop that made so many of 100 period pieces, and how many of its pieces show each of its habits. */
export const shopOf = (id: string, share: number, habits: Record<string, number>) =>
  shop.parse({
    id,
    name: `The ${id} shop`,
    kind: 'workshop',
    invented: true,
    place: 'Northam',
    years: [1600, 2026],
    forms: ['box'],
    share: exactly(share),
    what: 'Made up.',
    habits: Object.entries(habits).map(([habit, in100]) => ({ sign: habit, shows: exactly(in100) })),
    basis,
  });

/** An alteration that so many of 100 pieces of any making have been through. */
export const alterationOf = (id: string, kind: 'upkeep' | 'make-up', in100: number) =>
  alteration.parse({
    id,
    class: kind,
    name: `Changed by ${id}`,
    what: 'What.',
    honestContrast: 'No.',
    tellOwner: 'Tell.',
    desirability: 'Less.',
    basis,
    happened: all({ period: in100, later: in100 }),
    // One that puts a piece together brings in every other board.
    changes: kind === 'make-up' ? { board: { to: 'other-old', in100: exactly(50) } } : {},
  });

/** What made-up knowledge is to hold besides the bare box; the odds are those of period, bench copy, machine copy and fake. */
export type Made = {
  signs: ReturnType<typeof signOf>[];
  shops?: ReturnType<typeof shopOf>[];
  alterations?: ReturnType<typeof alterationOf>[];
  odds?: [number, number, number, number];
  /** How many of 100 lids and boards were renewed, and how many the maker took from another old piece. */
  renewed?: number;
  reused?: number;
  structural?: boolean;
};

/** `handKnowledge` with what a case needs of shops, alterations and renewed parts: still worked by hand from the shares typed in it. */
export function handPieces({
  signs,
  shops = [],
  alterations = [],
  odds = [9970, 10, 10, 10],
  ...parts
}: Made): Knowledge {
  const hand = handKnowledge({}, odds);
  const byId = <One extends { id: string }>(list: One[]) =>
    Object.fromEntries(list.map((one) => [one.id, one]));
  const box = hand.forms.box as Form;
  const { renewed = 0, reused = 0, structural = true } = parts;
  const old = { in100: exactly(reused) };
  return {
    ...hand,
    signs: byId(signs),
    shops: byId(shops),
    alterations: byId(alterations),
    making: {
      ...hand.making,
      reused: { period: old, 'bench-copy': old, 'machine-copy': old, 'to-deceive': old, ofOldStock: old },
    },
    forms: {
      box: {
        ...box,
        alterations: alterations.map(({ id }) => id),
        parts: box.parts.map((part) => ({ ...part, structural, renewed: { in100: exactly(renewed) } })),
      },
    },
  };
}
