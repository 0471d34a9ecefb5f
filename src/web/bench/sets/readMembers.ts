import { parseLength } from '../../../units/length.ts';

/** What is typed of the members of a set: a column for each measure, a row for each member. */
export type MemberTable = { columns: string[]; rows: MemberRow[] };
export type MemberRow = { id: string; kind: string; cells: string[] };

/** The kinds of a member that the table offers; others may be pasted. */
export const memberKinds = ['side chair', 'armchair'] as const;

/** A table to begin with. */
export function emptyTable(): MemberTable {
  const columns = ['Overall width', 'Seat width, front', 'Seat height', 'Height'];
  const row = (id: string): MemberRow => ({ id, kind: 'side chair', cells: columns.map(() => '') });
  return { columns, rows: [row('I'), row('II'), row('III')] };
}

/** Whether nothing has been typed in it yet. */
export function isBlank({ rows }: MemberTable): boolean {
  return rows.every(({ cells }) => cells.every((cell) => cell.trim() === ''));
}

/**
 * A table as it comes out of a spreadsheet: cells parted by tabs, lines by line ends.
 *
 * Method: a first line without any length is the headings; a column whose cells are all kinds (arm, side, single, elbow) says the
 * kind; the first other column that holds no lengths names the members; the rest are measures. Without headings the measures go by
 * the names that stand in the table already.
 *
 * @returns a sentence on what to do where no table can be read
 */
export function readTable(
  text: string,
  names: readonly string[],
): { ok: true; table: MemberTable } | { ok: false; message: string } {
  const lines = text
    .split(/\r?\n/)
    .filter((line) => line.trim() !== '')
    .map((line) => line.split('\t').map((cell) => cell.trim()));
  if (lines.length === 0 || lines.every((line) => line.length < 2))
    return {
      ok: false,
      message:
        'Copy the cells in the spreadsheet and paste them here: a line for each member, parted by tabs.',
    };
  const isHeaded = (lines[0] as string[]).every((cell) => !isLength(cell)) && lines.length > 1;
  const body = isHeaded ? lines.slice(1) : lines;
  const wide = Math.max(...lines.map((line) => line.length));
  const columns = Array.from({ length: wide }, (_, at) => body.map((line) => line[at] ?? ''));
  const kindAt = columns.findIndex(
    (cells) => cells.some((cell) => cell !== '') && cells.every((cell) => cell === '' || isKind(cell)),
  );
  const headed = (at: number) => (isHeaded ? (lines[0]?.[at] ?? '') : '');
  const nameAt = columns.findIndex(
    (cells, at) =>
      at !== kindAt &&
      (/^(member|name|no\.?|number|chair|piece)$/i.test(headed(at)) || !cells.some(isLength)),
  );
  const measuresAt = columns.flatMap((_, at) => (at === kindAt || at === nameAt ? [] : [at]));
  if (measuresAt.every((at) => !columns[at]?.some(isLength)))
    return { ok: false, message: 'No length was found in it: write lengths as 21 5/8 or 549 mm.' };
  return {
    ok: true,
    table: {
      columns: distinct(measuresAt.map((at, index) => headed(at) || names[index] || `Measure ${index + 1}`)),
      rows: body.map((line, index) => ({
        id: (nameAt < 0 ? '' : line[nameAt]) || String(index + 1),
        kind: kindAt < 0 ? 'side chair' : kindOf(line[kindAt] ?? ''),
        cells: measuresAt.map((at) => line[at] ?? ''),
      })),
    },
  };
}

/** What can't be read in a table, each in a sentence that says where. */
export function tableFaults({ columns, rows }: MemberTable): string[] {
  return rows.flatMap(({ id, cells }) =>
    cells.flatMap((cell, at) => {
      const read = cell.trim() === '' ? undefined : parseLength(cell);
      return read?.ok === false
        ? [`${columns[at]} of ${id || 'a member without a name'}: ${read.message}`]
        : [];
    }),
  );
}

/** The members as `sets.likeness` asks for them; rows and cells without a length are left out. */
export function membersOf({ columns, rows }: MemberTable) {
  return rows.flatMap(({ id, kind, cells }, index) => {
    const measures = Object.fromEntries(
      cells.flatMap((cell, at) => {
        const read = parseLength(cell);
        return read.ok ? [[columns[at] as string, read.mm] as const] : [];
      }),
    );
    if (Object.keys(measures).length === 0) return [];
    return [{ id: id.trim() || `row ${index + 1}`, kind: kind.trim() || 'member', measures }];
  });
}

function isLength(cell: string): boolean {
  return /\d/.test(cell) && parseLength(cell).ok;
}

function isKind(cell: string): boolean {
  return /\b(arm|side|single|elbow)|armchair|stool|settee/i.test(cell);
}

function kindOf(cell: string): string {
  if (/arm|elbow/i.test(cell)) return 'armchair';
  if (/side|single/i.test(cell)) return 'side chair';
  return cell || 'side chair';
}

/** Two columns of one name would hide one another. */
function distinct(names: readonly string[]): string[] {
  return names.map((name, at) => {
    const before = names.slice(0, at).filter((each) => each === name).length;
    return before === 0 ? name : `${name} (${before + 1})`;
  });
}
