import Papa from 'papaparse';
import type { PriceComparable } from '../../piece/worth.ts';
import { parseMoney } from '../../units/money.ts';

/** A pasted table: its heads, and its rows as text. */
export type PastedTable = { heads: string[]; rows: string[][] };

/** What a column of a pasted table can be. */
export const saleFields = ['name', 'date', 'where', 'price', 'premiumPercent'] as const;
export type SaleField = (typeof saleFields)[number];

/** Which column holds what; a field without a column is left out. */
export type ColumnsOf = Partial<Record<SaleField, number>>;

/** Reads a table as a spreadsheet or a file hands it over: tabs, commas or semicolons between, quotes around. */
export function readTable(text: string): PastedTable {
  const { data } = Papa.parse<string[]>(text.trim(), {
    skipEmptyLines: 'greedy',
    delimitersToGuess: ['\t', ';', ','],
  });
  const [heads = [], ...rows] = data;
  return { heads: heads.map((each) => each.trim()), rows };
}

/** A first guess at the columns by their heads, for the person to put right. */
export function guessColumns({ heads }: PastedTable): ColumnsOf {
  const taken = new Set<number>();
  const found: ColumnsOf = {};
  for (const field of saleFields) {
    const at = heads.findIndex((head, index) => !taken.has(index) && headWords[field].test(head));
    if (at < 0) continue;
    taken.add(at);
    found[field] = at;
  }
  return found;
}

const headWords: Record<SaleField, RegExp> = {
  name: /title|description|object|item|name|what|piece/i,
  date: /date|day|sold on|year/i,
  where: /house|sale|venue|where|lot|dealer/i,
  price: /price|hammer|paid|amount|realized|realised/i,
  premiumPercent: /premium/i,
};

/** The sales of a table, and the rows that were left out with why. */
export type ReadSales = {
  sales: Omit<PriceComparable, 'id' | 'adjustments' | 'weight'>[];
  left: { row: number; why: string }[];
};

/**
 * Turns rows into sales by the columns chosen. A row without a price or a date that can be read is left out and named, never guessed.
 *
 * @param premiumIncluded  whether the prices of this table have the buyer's premium in them
 */
export function salesOf({ rows }: PastedTable, columns: ColumnsOf, premiumIncluded: boolean): ReadSales {
  const found: ReadSales = { sales: [], left: [] };
  for (const [index, row] of rows.entries()) {
    const cell = (field: SaleField) =>
      columns[field] === undefined ? '' : (row[columns[field]] ?? '').trim();
    const price = parseMoney(cell('price'));
    const date = dateOf(cell('date'));
    const premium = Number(cell('premiumPercent').replace('%', '').trim());
    if (!price.ok) found.left.push({ row: index + 1, why: price.message });
    else if (date === undefined)
      found.left.push({
        row: index + 1,
        why: `“${cell('date')}” can’t be read as a date: write 2024, 2024-05, 2024-05-31 or 5/31/2024.`,
      });
    else
      found.sales.push({
        name: cell('name'),
        where: cell('where'),
        date,
        priceCents: price.cents,
        premiumIncluded,
        ...(cell('premiumPercent') === '' || !(premium >= 0 && premium <= 100)
          ? {}
          : { premiumPercent: premium }),
      });
  }
  return found;
}

/** A date as it is kept; undefined where it can’t be read for sure. */
function dateOf(text: string): string | undefined {
  if (/^\d{4}(-\d{2}(-\d{2})?)?$/.test(text)) return text;
  const found = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/.exec(text);
  if (found === null) return undefined;
  const [month, day] = [Number(found[1]), Number(found[2])];
  if (month < 1 || month > 12 || day < 1 || day > 31) return undefined;
  return `${found[3]}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}
