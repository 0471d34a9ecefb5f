import { ZipFile } from 'yazl';

/** A cell as it is written: text, a number, or a day as the number of days that workbooks count by. */
export type WrittenCell = string | number | { day: number };

/** A workbook of the given sheets, by hand. @source ECMA-376 (SpreadsheetML), the least a reader asks for, from memory */
export async function smallWorkbook(
  sheets: Readonly<Record<string, readonly (readonly WrittenCell[])[]>>,
): Promise<Buffer> {
  const zip = new ZipFile();
  const add = (name: string, xml: string) =>
    zip.addBuffer(Buffer.from(`<?xml version="1.0" encoding="UTF-8"?>${xml}`), name);
  const names = Object.keys(sheets);
  const type = 'application/vnd.openxmlformats-officedocument.spreadsheetml';
  const relation = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
  const packaged = 'http://schemas.openxmlformats.org/package/2006';
  add(
    '[Content_Types].xml',
    `<Types xmlns="${packaged}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${type}.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="${type}.styles+xml"/>${names.map((_, at) => `<Override PartName="/xl/worksheets/sheet${at + 1}.xml" ContentType="${type}.worksheet+xml"/>`).join('')}</Types>`,
  );
  add(
    '_rels/.rels',
    `<Relationships xmlns="${packaged}/relationships"><Relationship Id="r1" Type="${relation}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
  );
  add(
    'xl/workbook.xml',
    `<workbook xmlns="${main}" xmlns:r="${relation}"><sheets>${names.map((name, at) => `<sheet name="${name}" sheetId="${at + 1}" r:id="s${at + 1}"/>`).join('')}</sheets></workbook>`,
  );
  add(
    'xl/_rels/workbook.xml.rels',
    `<Relationships xmlns="${packaged}/relationships">${names.map((_, at) => `<Relationship Id="s${at + 1}" Type="${relation}/worksheet" Target="worksheets/sheet${at + 1}.xml"/>`).join('')}<Relationship Id="styles" Type="${relation}/styles" Target="styles.xml"/></Relationships>`,
  );
  // The second style is the built-in form of a day, number 14.
  add(
    'xl/styles.xml',
    `<styleSheet xmlns="${main}"><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/></cellXfs></styleSheet>`,
  );
  for (const [at, name] of names.entries()) {
    const rows = (sheets[name] ?? []).map(
      (cells, row) =>
        `<row r="${row + 1}">${cells.map((cell, column) => written(cell, `${String.fromCharCode(65 + column)}${row + 1}`)).join('')}</row>`,
    );
    add(
      `xl/worksheets/sheet${at + 1}.xml`,
      `<worksheet xmlns="${main}"><sheetData>${rows.join('')}</sheetData></worksheet>`,
    );
  }
  zip.end();
  const chunks: Buffer[] = [];
  for await (const chunk of zip.outputStream) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}

function written(cell: WrittenCell, at: string): string {
  if (typeof cell === 'number') return `<c r="${at}"><v>${cell}</v></c>`;
  if (typeof cell === 'object') return `<c r="${at}" s="1"><v>${cell.day}</v></c>`;
  return `<c r="${at}" t="inlineStr"><is><t>${cell.replace(/&/g, '&amp;').replace(/</g, '&lt;')}</t></is></c>`;
}
