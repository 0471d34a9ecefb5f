import { expect, it } from 'vitest';
import { smallWorkbook } from '../../../test/kits/smallWorkbook.ts';
import { guessColumns, readTable, salesOf } from './readSales.ts';
import { readWorkbook } from './readWorkbook.ts';

const blobOf = async (...asked: Parameters<typeof smallWorkbook>) =>
  new Blob([new Uint8Array(await smallWorkbook(...asked))]);

// 45443 is 31 May 2024, counted from 1 January 1900 as day 1 with the 29 February 1900 that workbooks believe in.
it('reads sales from a workbook as from a pasted table: days as days, prices as figures, sheets by name', async () => {
  const read = await readWorkbook(
    await blobOf({
      Empty: [],
      Sales: [
        ['Title', 'Sold on', 'House', 'Price', 'Premium'],
        ['Side chair, "pair" & seat', { day: 45443 }, 'A sale room', 4250.5, '25 %'],
        ['Without a price', { day: 45443 }, '', '', ''],
      ],
      Notes: [['One line']],
    }),
  );
  if (!read.ok) throw new Error(read.faults[0]?.message);
  expect(read.value.map(({ name }) => name)).toEqual(['Sales', 'Notes']);
  const table = readTable(read.value[0]?.text ?? '');
  const { sales, left } = salesOf(table, guessColumns(table), false);
  expect(sales).toEqual([
    {
      name: 'Side chair, "pair" & seat',
      where: 'A sale room',
      date: '2024-05-31',
      priceCents: 425_050,
      premiumIncluded: false,
      premiumPercent: 25,
    },
  ]);
  expect(left).toHaveLength(1);
});

it('refuses what is no workbook, and one with nothing in it, in a sentence', async () => {
  for (const file of [new Blob(['name,price\nA chair,100']), new Blob([]), await blobOf({ One: [] })]) {
    const read = await readWorkbook(file);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.faults[0]?.message).toMatch(/workbook/);
  }
});
