import { useId } from 'react';
import { useKeptLine } from './useKeptLine.ts';

type NumberFieldProps = {
  label: string;
  note?: string;
  unit?: string;
  begin: number | undefined;
  min?: number;
  max?: number;
  onNumber: (value: number | undefined) => void;
};

/** A number with its unit; what lies outside its bounds is said, not refused. */
export function NumberField({ label, note, unit, begin, min, max, onNumber }: NumberFieldProps) {
  const id = useId();
  const [text, type] = useKeptLine(label, begin === undefined ? '' : String(begin), (line) => {
    const next = Number(line.trim().replace(',', '.'));
    const sound =
      line.trim() !== '' &&
      Number.isFinite(next) &&
      (min === undefined || next >= min) &&
      (max === undefined || next <= max);
    onNumber(sound ? next : undefined);
  });
  const value = Number(text.trim().replace(',', '.'));
  const wrong =
    text.trim() === ''
      ? ''
      : !Number.isFinite(value)
        ? 'Write a number.'
        : (min !== undefined && value < min) || (max !== undefined && value > max)
          ? `Write a number from ${min ?? '…'} to ${max ?? '…'}.`
          : '';
  return (
    <div className="field">
      <label htmlFor={id}>{unit === undefined ? label : `${label} (${unit})`}</label>
      {note === undefined ? null : <span className="note">{note}</span>}
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        value={text}
        aria-invalid={wrong !== ''}
        aria-describedby={`${id}-says`}
        onChange={(change) => type(change.target.value)}
      />
      <span className="doubt" id={`${id}-says`} role="status">
        {wrong}
      </span>
    </div>
  );
}
