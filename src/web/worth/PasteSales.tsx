import { useId, useState } from 'react';
import { counted } from '../../ground/words.ts';
import type { Json } from '../../piece/event.ts';
import { priceComparable } from '../../piece/worth.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { PickField } from '../fields/PickField.tsx';
import type { UsedPiece } from '../record/usePiece.ts';
import { type ColumnsOf, guessColumns, readTable, type SaleField, saleFields, salesOf } from './readSales.ts';
import { readWorkbook, type WorkbookSheet } from './readWorkbook.ts';

const fieldNames: Record<SaleField, string> = {
  name: 'What was sold',
  date: 'Sold on',
  where: 'Where',
  price: 'Price',
  premiumPercent: 'Premium in percent',
};

/** Sales from a table that is pasted in or opened as a CSV or XLSX file, once it is said which column is what. */
export function PasteSales({ used }: { used: UsedPiece }) {
  const id = useId();
  const [text, setText] = useState('');
  const [chosen, setChosen] = useState<ColumnsOf>();
  const [premium, setPremium] = useState<'in' | 'out'>();
  const [said, setSaid] = useState('');
  const [sheets, setSheets] = useState<readonly WorkbookSheet[]>([]);
  const table = readTable(text);
  const columns = chosen ?? guessColumns(table);
  const { sales, left } = salesOf(table, columns, premium === 'in');
  const type = (now: string) => {
    setText(now);
    setChosen(undefined);
    setSaid('');
  };
  const openFile = async (file: File) => {
    if (!/\.xlsx$/i.test(file.name)) {
      setSheets([]);
      type(await file.text());
      return;
    }
    const read = await readWorkbook(file);
    setSheets(read.ok ? read.value : []);
    type(read.ok ? (read.value[0]?.text ?? '') : '');
    if (!read.ok) setSaid(read.faults.map(({ message }) => message).join(' '));
  };
  const enter = () => {
    used.record(
      'comparable-recorded',
      sales.map((sale) => {
        const key = crypto.randomUUID();
        return { path: ['comparables', key], to: priceComparable.parse({ id: key, ...sale }) as Json };
      }),
    );
    setSaid(`${counted(sales.length, 'sale')} entered.`);
    setText('');
    setChosen(undefined);
  };
  return (
    <details className="worth-paste">
      <summary>Paste a table, or open a CSV or XLSX file</summary>
      <div className="stack">
        <div className="field">
          <label htmlFor={id}>The table, its heads in the first row</label>
          <textarea id={id} rows={5} value={text} onChange={(change) => type(change.target.value)} />
        </div>
        <div className="field">
          <label htmlFor={`${id}-file`}>CSV or XLSX file</label>
          <input
            id={`${id}-file`}
            type="file"
            accept=".csv,.tsv,.txt,.xlsx,text/csv,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
            onChange={(change) => {
              const file = change.target.files?.[0];
              if (file !== undefined) void openFile(file);
            }}
          />
        </div>
        {sheets.length < 2 ? null : (
          <PickField
            label="Sheet of the workbook"
            value={String(
              Math.max(
                0,
                sheets.findIndex((sheet) => sheet.text === text),
              ),
            )}
            options={sheets.map(({ name }, index) => ({ id: String(index), name }))}
            onPick={(at) => type(sheets[Number(at)]?.text ?? '')}
          />
        )}
        {table.rows.length === 0 ? null : (
          <>
            <div className="pair">
              {saleFields.map((field) => (
                <PickField
                  key={field}
                  label={fieldNames[field]}
                  value={String(columns[field] ?? '')}
                  options={[
                    { id: '', name: 'not in the table' },
                    ...table.heads.map((head, index) => ({
                      id: String(index),
                      name: head || `column ${index + 1}`,
                    })),
                  ]}
                  onPick={(at) => {
                    const { [field]: _, ...rest } = columns;
                    setChosen(at === '' ? rest : { ...rest, [field]: Number(at) });
                  }}
                />
              ))}
            </div>
            <ChoiceField
              label="The buyer’s premium is"
              choices={[
                { id: 'in', name: 'in these prices' },
                { id: 'out', name: 'not in these prices' },
              ]}
              value={premium}
              save={setPremium}
            />
            <p role="status">
              {counted(sales.length, 'sale')} read
              {left.length === 0 ? '.' : `, ${counted(left.length, 'row')} left out:`}
            </p>
            {left.slice(0, 5).map(({ row, why }) => (
              <p key={row} className="small doubt">
                Row {row}: {why}
              </p>
            ))}
            <p>
              <button
                type="button"
                className="button"
                disabled={sales.length === 0 || premium === undefined}
                onClick={enter}
              >
                Enter {counted(sales.length, 'sale')}
              </button>
            </p>
          </>
        )}
        <p role="status" className="small">
          {said}
        </p>
      </div>
    </details>
  );
}
