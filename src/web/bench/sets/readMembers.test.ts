import { describe, expect, it } from 'vitest';
import { emptyTable, isBlank, membersOf, readTable, tableFaults } from './readMembers.ts';

const read = (text: string, names: string[] = []) => {
  const found = readTable(text, names);
  if (!found.ok) throw new Error(found.message);
  return found.table;
};

describe('a table pasted from a spreadsheet', () => {
  it('takes headings, kinds and lengths in inches or millimeters', () => {
    const table = read(
      'Chair\tKind\tOverall width\tSeat width, front\r\nI\tside\t21 3/4\t20 7/8\r\nA\tArm chair\t26 1/4"\t584 mm\r\n',
    );
    expect(table.columns).toEqual(['Overall width', 'Seat width, front']);
    expect(membersOf(table)).toEqual([
      { id: 'I', kind: 'side chair', measures: { 'Overall width': 552.45, 'Seat width, front': 530.225 } },
      { id: 'A', kind: 'armchair', measures: { 'Overall width': 666.75, 'Seat width, front': 584 } },
    ]);
  });

  it('goes by the names in the table where it has no headings', () => {
    const table = read('III\t21\t17\nV\t21 1/8\t16 7/8', ['Width', 'Seat height']);
    expect(table.columns).toEqual(['Width', 'Seat height']);
    expect(table.rows.map(({ id }) => id)).toEqual(['III', 'V']);
  });

  it('takes a column headed number as names, though its cells could be lengths', () => {
    const table = read('Number\tWidth\n1\t21\n2\t22');
    expect(table.rows).toEqual([
      { id: '1', kind: 'side chair', cells: ['21'] },
      { id: '2', kind: 'side chair', cells: ['22'] },
    ]);
  });

  it('keeps two columns of one name apart, and empty cells empty', () => {
    const table = read('Member\tWidth\tWidth\nI\t21\t\nII\t\t22');
    expect(table.columns).toEqual(['Width', 'Width (2)']);
    expect(membersOf(table).map(({ measures }) => Object.keys(measures))).toEqual([['Width'], ['Width (2)']]);
  });

  it('says what to do with what is no table, or has no lengths', () => {
    expect(readTable('six chairs', [])).toMatchObject({
      ok: false,
      message: expect.stringContaining('paste'),
    });
    expect(readTable('a\tb\nc\td', [])).toMatchObject({
      ok: false,
      message: expect.stringContaining('21 5/8'),
    });
  });
});

describe('a table as it is typed', () => {
  it('begins blank, and leaves out members without a length', () => {
    expect(isBlank(emptyTable())).toBe(true);
    expect(membersOf(emptyTable())).toEqual([]);
  });

  it('names the cell that can’t be read', () => {
    const faults = tableFaults({ columns: ['Width'], rows: [{ id: 'II', kind: '', cells: ['371/8'] }] });
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatch(/^Width of II: /);
  });
});
