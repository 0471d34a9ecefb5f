import Papa from 'papaparse';
import { done, type Outcome, refuse } from '../../ground/fault.ts';

/** One sheet of a workbook, written as a table with tabs between, so that it is read and mapped as what is pasted. */
export type WorkbookSheet = { name: string; text: string };

/**
 * The sheets of an XLSX file that hold something, in their order; days as `2024-05-31`. Formulas are never worked out: what the file last showed is
 * taken. Older workbooks (XLS) and files that are none are refused in a sentence.
 */
export async function readWorkbook(file: Blob): Promise<Outcome<WorkbookSheet[]>> {
  const { default: readSheets } = await import('read-excel-file/universal');
  try {
    const sheets = await readSheets(file);
    const held = sheets
      .map(({ sheet, data }) => ({ name: sheet, text: tableOf(data as Cell[][]) }))
      .filter(({ text }) => text.trim() !== '');
    return held.length === 0
      ? refuse('worth.empty-workbook', 'There is nothing in this workbook.', 'file')
      : done(held);
  } catch {
    return refuse(
      'worth.no-workbook',
      'This file can’t be read as a workbook. Save it as XLSX or CSV in the program it comes from, and open that.',
      'file',
    );
  }
}

type Cell = string | number | boolean | Date | null;

function tableOf(rows: readonly Cell[][]): string {
  return Papa.unparse(
    rows.filter((row) => row.some((cell) => cell !== null && cell !== '')).map((row) => row.map(cellText)),
    { delimiter: '\t', newline: '\n' },
  );
}

/** Days are kept by a workbook without a zone: they are the day that it shows. */
function cellText(cell: Cell): string {
  if (cell === null) return '';
  return cell instanceof Date ? cell.toISOString().slice(0, 10) : String(cell);
}
