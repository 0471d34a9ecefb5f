import { useId } from 'react';

type PickFieldProps = {
  label: string;
  note?: string;
  value: string;
  options: readonly { id: string; name: string }[];
  onPick: (id: string) => void;
  readOnly?: boolean | undefined;
};

/** One of many, from a list that opens. */
export function PickField({ label, note, value, options, onPick, readOnly = false }: PickFieldProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {note === undefined ? null : <span className="note">{note}</span>}
      <select id={id} value={value} disabled={readOnly} onChange={(change) => onPick(change.target.value)}>
        {options.map((option) => (
          <option key={option.id} value={option.id}>
            {option.name}
          </option>
        ))}
      </select>
    </div>
  );
}
