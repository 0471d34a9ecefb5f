import { useId, useState } from 'react';
import { LeftText } from './LeftText.tsx';
import { useTyped } from './useTyped.ts';

type YearFieldProps = {
  label: string;
  value: number | undefined;
  save: (year: number | undefined) => void;
  readOnly?: boolean;
};

/** One year in four figures, or empty where it is not known. */
export function YearField({ label, value, save, readOnly }: YearFieldProps) {
  const id = useId();
  const [doubtful, setDoubtful] = useState<string>();
  const typed = useTyped(label, doubtful ?? (value === undefined ? '' : String(value)), (text) => {
    const plain = text.trim();
    const sound = plain === '' || /^[12]\d{3}$/.test(plain);
    setDoubtful(sound ? undefined : text);
    if (sound) save(plain === '' ? undefined : Number(plain));
  });
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        inputMode="numeric"
        autoComplete="off"
        value={typed.text}
        readOnly={readOnly}
        aria-invalid={doubtful !== undefined}
        aria-describedby={`${id}-doubt`}
        onChange={(change) => typed.type(change.target.value)}
        onBlur={typed.keep}
      />
      <span className="doubt" id={`${id}-doubt`} role="status">
        {doubtful === undefined ? '' : 'Write one year in four figures, or leave it empty.'}
      </span>
      <LeftText left={typed.left} />
    </div>
  );
}
