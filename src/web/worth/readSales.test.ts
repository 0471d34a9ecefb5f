import { expect, test } from 'vitest';
import { guessColumns, readTable, salesOf } from './readSales.ts';

const rows = [
  ['Description', 'Sale date', 'House', 'Hammer price', 'Premium %'],
  ['Chest, "bow front", oak', '2024-05-31', 'Invented Rooms, lot 12', '$3,200', '25%'],
  ['Another, with\na line break', '5/7/2023', '', '1800.50', ''],
  ['No price', '2020', '', 'unsold', ''],
  ['No date', 'spring', '', '40', ''],
];
const quoted = (cell: string) => `"${cell.replaceAll('"', '""')}"`;

test.each([',', ';', '\t'])('a table with %j between its cells', (between) => {
  const table = readTable(rows.map((row) => row.map(quoted).join(between)).join('\r\n'));
  expect(table.heads).toEqual(rows[0]);
  const columns = guessColumns(table);
  expect(columns).toEqual({ name: 0, date: 1, where: 2, price: 3, premiumPercent: 4 });
  const { sales, left } = salesOf(table, columns, false);
  expect(sales).toEqual([
    { name: rows[1]?.[0], where: 'Invented Rooms, lot 12', date: '2024-05-31', priceCents: 320_000, premiumIncluded: false, premiumPercent: 25 }, // biome-ignore format: a row
    { name: rows[2]?.[0], where: '', date: '2023-05-07', priceCents: 180_050, premiumIncluded: false },
  ]);
  expect(left.map(({ row }) => row)).toEqual([3, 4]);
  expect(left[0]?.why).toContain('unsold');
});

test('a column that is not chosen is left empty, and nothing is read from nothing', () => {
  const table = readTable('price,year\n40,1999\n');
  expect(salesOf(table, { price: 0, date: 1 }, true).sales).toEqual([
    { name: '', where: '', date: '1999', priceCents: 4000, premiumIncluded: true },
  ]);
  expect(salesOf(readTable(''), {}, true)).toEqual({ sales: [], left: [] });
});
