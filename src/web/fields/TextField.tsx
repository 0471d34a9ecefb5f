import { useId } from 'react';
import { LeftText } from './LeftText.tsx';
import { useTyped } from './useTyped.ts';

type TextFieldProps = {
  label: string;
  note?: string;
  value: string;
  save: (text: string) => void;
  lines?: boolean;
  readOnly?: boolean;
  autoComplete?: string;
  /** True where `save` makes no act: the text then stays on this device until its page lets it go. */
  holds?: boolean;
};

/** A line or some lines of text, kept as they are typed. */
export function TextField({
  label,
  note,
  value,
  save,
  lines,
  readOnly,
  autoComplete = 'off',
  holds = false,
}: TextFieldProps) {
  const id = useId();
  const typed = useTyped(label, value, save, holds);
  const shared = {
    id,
    value: typed.text,
    readOnly,
    autoComplete,
    onBlur: typed.keep,
    ...(note === undefined ? {} : { 'aria-describedby': `${id}-note` }),
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {note === undefined ? null : (
        <span className="note" id={`${id}-note`}>
          {note}
        </span>
      )}
      {lines ? (
        <textarea {...shared} rows={3} onChange={(change) => typed.type(change.target.value)} />
      ) : (
        <input type="text" {...shared} onChange={(change) => typed.type(change.target.value)} />
      )}
      <LeftText left={typed.left} />
    </div>
  );
}
