import { useId, useState } from 'react';
import { formatMoney, parseMoney } from '../../units/money.ts';
import { LeftText } from './LeftText.tsx';
import { useTyped } from './useTyped.ts';

type MoneyFieldProps = {
  label: string;
  note?: string;
  value: number | undefined;
  save: (cents: number | undefined) => void;
  readOnly?: boolean;
};

/** A sum of dollars as people write it, kept in cents; what can’t be read is asked about. */
export function MoneyField({ label, note, value, save, readOnly }: MoneyFieldProps) {
  const id = useId();
  const [doubtful, setDoubtful] = useState<{ text: string; message: string }>();
  const written = value === undefined ? '' : formatMoney(value);
  const typed = useTyped(label, doubtful?.text ?? written, (text) => {
    const read = text.trim() === '' ? undefined : parseMoney(text);
    setDoubtful(read === undefined || read.ok ? undefined : { text, message: read.message });
    if (read === undefined) save(undefined);
    else if (read.ok) save(read.cents);
  });
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {note === undefined ? null : (
        <span className="note" id={`${id}-note`}>
          {note}
        </span>
      )}
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        value={typed.text}
        readOnly={readOnly}
        aria-invalid={doubtful !== undefined}
        aria-describedby={note === undefined ? `${id}-doubt` : `${id}-note ${id}-doubt`}
        onChange={(change) => typed.type(change.target.value)}
        onBlur={typed.keep}
      />
      <span className="doubt" id={`${id}-doubt`} role="status">
        {doubtful?.message}
      </span>
      <LeftText left={typed.left} />
    </div>
  );
}
