import { useId, useState } from 'react';
import { formatYears, parseYears, type YearSpan } from '../../units/years.ts';
import { LeftText } from './LeftText.tsx';
import { useTyped } from './useTyped.ts';

type YearsFieldProps = {
  label: string;
  note?: string;
  value: YearSpan | undefined;
  save: (years: [number, number] | undefined) => void;
  readOnly?: boolean;
  /** True where `save` makes no act: the text then stays on this device until its page lets it go. */
  holds?: boolean;
};

/** Years as the trade writes them: `1775`, `1760–1790`, `1760s`, `about 1775`. What can't be read is asked about. */
export function YearsField({ label, note, value, save, readOnly, holds = false }: YearsFieldProps) {
  const id = useId();
  const [doubtful, setDoubtful] = useState<{ text: string; message: string }>();
  const written = value === undefined ? '' : formatYears(value);
  const typed = useTyped(
    label,
    doubtful?.text ?? written,
    (text) => {
      if (text.trim() === '') {
        setDoubtful(undefined);
        if (value !== undefined) save(undefined);
        return;
      }
      const read = parseYears(text);
      setDoubtful(read.ok ? undefined : { text, message: read.message });
      if (read.ok) save([read.years[0], read.years[1]]);
    },
    holds,
  );
  const described = [note === undefined ? '' : `${id}-note`, doubtful === undefined ? '' : `${id}-doubt`];
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
        autoComplete="off"
        value={typed.text}
        readOnly={readOnly}
        aria-invalid={doubtful !== undefined}
        aria-describedby={described.filter((one) => one !== '').join(' ') || undefined}
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
