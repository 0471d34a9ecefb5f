import { useId } from 'react';

type Props = { label: string; value: string; onType: (text: string) => void; isYear?: boolean };

/** A short line of text told letter by letter. */
export function TextInput({ label, value, onType, isYear = false }: Props) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        inputMode={isYear ? 'numeric' : 'text'}
        autoComplete="off"
        value={value}
        onChange={(change) => onType(change.target.value)}
      />
    </div>
  );
}
