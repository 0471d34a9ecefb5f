import { useId, useState } from 'react';
import { LeftText } from './LeftText.tsx';
import { useTyped } from './useTyped.ts';

type PercentFieldProps = {
  label: string;
  unit?: string;
  note?: string;
  value: number | undefined;
  save: (value: number | undefined) => void;
  readOnly?: boolean;
  /** True where it may lower: −5. */
  signed?: boolean;
};

/** A percentage or a plain number, kept as it is typed. */
export function PercentField({
  label,
  unit = 'percent',
  note,
  value,
  save,
  readOnly,
  signed = false,
}: PercentFieldProps) {
  const id = useId();
  const [doubtful, setDoubtful] = useState<string>();
  const typed = useTyped(label, doubtful ?? (value === undefined ? '' : String(value)), (text) => {
    const plain = text.trim().replace('−', '-').replace('%', '').replace(',', '.').trim();
    const number = Number(plain);
    const sound =
      plain === '' ||
      (Number.isFinite(number) && number >= (signed ? -100 : 0) && number <= (signed ? 1000 : 100));
    setDoubtful(sound ? undefined : text);
    if (sound) save(plain === '' ? undefined : number);
  });
  return (
    <div className="field">
      <label htmlFor={id}>
        {label} ({unit})
      </label>
      {note === undefined ? null : <span className="note">{note}</span>}
      <input
        id={id}
        type="text"
        autoComplete="off"
        value={typed.text}
        readOnly={readOnly}
        aria-invalid={doubtful !== undefined}
        aria-describedby={`${id}-doubt`}
        onChange={(change) => typed.type(change.target.value)}
        onBlur={typed.keep}
      />
      <span className="doubt" id={`${id}-doubt`} role="status">
        {doubtful === undefined ? '' : `Write a number from ${signed ? '−100 to 1000' : '0 to 100'}.`}
      </span>
      <LeftText left={typed.left} />
    </div>
  );
}
