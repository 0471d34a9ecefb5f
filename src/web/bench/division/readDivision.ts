import { z } from 'zod';
import { parseMoney } from '../../../units/money.ts';
import { divisionMethods } from '../../../worth/divideEstate.ts';

/** What is typed at the division: names, bids as text, and which set a piece belongs to. */
export const draftShape = z.object({
  heirs: z.array(z.string()),
  items: z.array(z.object({ name: z.string(), set: z.string(), bids: z.array(z.string()) })),
  method: z.enum(divisionMethods),
});
export type Draft = z.infer<typeof draftShape>;

/** Two heirs and two pieces, nothing written yet. */
export function emptyDivision(): Draft {
  const item = { name: '', set: '', bids: ['', ''] };
  return { heirs: ['', ''], items: [item, { ...item, bids: ['', ''] }], method: 'sealed-bids' };
}

/** The division as `worth.division` asks for it, or what is still to be written. */
export function askedDivision({ heirs, items, method }: Draft) {
  const names = heirs.map((each) => each.trim());
  const rows = items.filter(({ name, bids }) => name.trim() !== '' || bids.some((bid) => bid.trim() !== ''));
  const lacking = [
    ...(names.some((each) => each === '') ? ['Every heir needs a name.'] : []),
    ...(rows.length === 0 ? ['Write the pieces down.'] : []),
    ...(rows.some(({ name }) => name.trim() === '') ? ['Every piece needs a name.'] : []),
    ...rows.flatMap(({ name, bids }) =>
      names.flatMap((heir, index) => {
        const text = bids[index] ?? '';
        if (text.trim() === '')
          return [
            `${heir || 'An heir'} has set nothing on “${name}”: write 0 where it is worth nothing to them.`,
          ];
        const read = parseMoney(text);
        return read.ok ? [] : [read.message];
      }),
    ),
  ];
  if (lacking.length > 0) return { lacking };
  const sum = (text: string) => {
    const read = parseMoney(text);
    return read.ok ? read.cents / 100 : 0;
  };
  const sets = [...new Set(rows.map(({ set }) => set).filter((each) => each !== ''))];
  return {
    asked: {
      heirs: names,
      items: rows.map(({ name }) => name.trim()),
      bids: Object.fromEntries(
        names.map((heir, index) => [
          heir,
          Object.fromEntries(rows.map(({ name, bids }) => [name.trim(), sum(bids[index] ?? '')])),
        ]),
      ),
      method,
      keepTogether: sets
        .map((set) => rows.filter((row) => row.set === set).map(({ name }) => name.trim()))
        .filter((group) => group.length > 1),
    },
  };
}
