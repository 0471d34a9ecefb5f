import { useId, useState } from 'react';
import { parseLength } from '../../../units/length.ts';
import { type MemberTable, memberKinds, readTable } from './readMembers.ts';

type Props = { table: MemberTable; onType: (table: MemberTable) => void };

/** The members as a table to type in: a row each, a column for each measure. A paste from a spreadsheet fills it. */
export function MemberGrid({ table, onType }: Props) {
  const [column, setColumn] = useState('');
  const [said, setSaid] = useState('');
  const id = useId();
  const { columns, rows } = table;
  const typeRow = (at: number, change: Partial<MemberTable['rows'][number]>) =>
    onType({ columns, rows: rows.map((row, index) => (index === at ? { ...row, ...change } : row)) });
  const addColumn = () => {
    const name = column.trim();
    if (name === '') return setSaid('Write the name of the measure first.');
    if (columns.includes(name)) return setSaid(`There is a measure “${name}” already.`);
    onType({ columns: [...columns, name], rows: rows.map((row) => ({ ...row, cells: [...row.cells, ''] })) });
    setColumn('');
    setSaid(`“${name}” is added.`);
  };
  const dropColumn = (at: number) =>
    onType({
      columns: columns.filter((_, index) => index !== at),
      rows: rows.map((row) => ({ ...row, cells: row.cells.filter((_, index) => index !== at) })),
    });
  const addRow = () => {
    const last = rows.at(-1)?.kind ?? 'side chair';
    onType({
      columns,
      rows: [...rows, { id: String(rows.length + 1), kind: last, cells: columns.map(() => '') }],
    });
  };
  return (
    <div className="stack-tight">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard */}
      <section className="sets-scroll" aria-label="Members and their measures" tabIndex={0}>
        <table
          className="sets-grid"
          onPaste={(paste) => {
            const text = paste.clipboardData.getData('text/plain');
            if (!text.includes('\t')) return;
            paste.preventDefault();
            const read = readTable(text, columns);
            if (!read.ok) return setSaid(read.message);
            onType(read.table);
            setSaid(`${read.table.rows.length} members are pasted in.`);
          }}
        >
          <thead>
            <tr>
              <th scope="col">Member</th>
              <th scope="col">Kind</th>
              {columns.map((name, at) => (
                <th scope="col" key={name}>
                  {name}
                  {columns.length > 1 && (
                    <button
                      type="button"
                      className="button plain small"
                      aria-label={`Leave out the measure ${name}`}
                      onClick={() => dropColumn(at)}
                    >
                      ×
                    </button>
                  )}
                </th>
              ))}
              <th />
            </tr>
          </thead>
          <tbody>
            {rows.map((row, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place; its name is being typed
              <tr key={at}>
                <td>
                  <input
                    type="text"
                    autoComplete="off"
                    aria-label={`Name or number of member ${at + 1}`}
                    value={row.id}
                    onChange={(change) => typeRow(at, { id: change.target.value })}
                  />
                </td>
                <td>
                  <select
                    aria-label={`Kind of ${row.id}`}
                    value={row.kind}
                    onChange={(change) => typeRow(at, { kind: change.target.value })}
                  >
                    {[...new Set([...memberKinds, row.kind])].map((kind) => (
                      <option key={kind}>{kind}</option>
                    ))}
                  </select>
                </td>
                {columns.map((name, cell) => (
                  <td key={name}>
                    <input
                      type="text"
                      autoComplete="off"
                      aria-label={`${name} of ${row.id}`}
                      aria-invalid={row.cells[cell]?.trim() !== '' && !parseLength(row.cells[cell] ?? '').ok}
                      value={row.cells[cell] ?? ''}
                      onChange={(change) =>
                        typeRow(at, {
                          cells: columns.map((_, index) =>
                            index === cell ? change.target.value : (row.cells[index] ?? ''),
                          ),
                        })
                      }
                    />
                  </td>
                ))}
                <td>
                  <button
                    type="button"
                    className="button plain small"
                    aria-label={`Remove ${row.id || `member ${at + 1}`}`}
                    onClick={() => onType({ columns, rows: rows.filter((_, index) => index !== at) })}
                  >
                    ×
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <div className="row">
        <button type="button" className="button quiet" onClick={addRow}>
          Add a member
        </button>
        <div className="field">
          <label htmlFor={id}>Another measure</label>
          <input
            id={id}
            type="text"
            autoComplete="off"
            value={column}
            onChange={(change) => setColumn(change.target.value)}
          />
        </div>
        <button type="button" className="button quiet" onClick={addColumn}>
          Add the measure
        </button>
      </div>
      <p role="status" className="small">
        {said}
      </p>
      <PasteField
        onPaste={(text) => {
          const read = readTable(text, columns);
          if (read.ok) onType(read.table);
          return read.ok ? `${read.table.rows.length} members are pasted in.` : read.message;
        }}
      />
    </div>
  );
}

/** A place to paste into by hand, for a finger or a keyboard that can't paste into the table itself. */
function PasteField({ onPaste }: { onPaste: (text: string) => string }) {
  const id = useId();
  const [text, setText] = useState('');
  const [said, setSaid] = useState('');
  return (
    <details>
      <summary>Paste from a spreadsheet</summary>
      <div className="field">
        <label htmlFor={id}>Cells copied from a spreadsheet</label>
        <span className="note">
          A line for each member: name, kind, then its measures; a first line of headings is read as their
          names. It takes the place of the table above.
        </span>
        <textarea id={id} rows={4} value={text} onChange={(change) => setText(change.target.value)} />
        <div className="row">
          <button type="button" className="button quiet" onClick={() => setSaid(onPaste(text))}>
            Put it in the table
          </button>
          <span role="status" className="small">
            {said}
          </span>
        </div>
      </div>
    </details>
  );
}
