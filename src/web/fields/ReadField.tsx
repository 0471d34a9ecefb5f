import { useId, useState } from 'react';
import { LeftText } from './LeftText.tsx';
import { useTyped } from './useTyped.ts';

/** What a line was read as, or what to write instead. */
export type ReadLine<Value> = { ok: true; value: Value } | { ok: false; message: string };

export type ReadFieldProps<Value> = {
  label: string;
  note?: string | undefined;
  /** What the record has, as it is written; empty for nothing. */
  written: string;
  /** Asked for text that is not blank. */
  read: (text: string) => ReadLine<Value>;
  /** Told what was read; undefined where the field was emptied. */
  save: (value: Value | undefined) => void;
  readOnly?: boolean | undefined;
  inputMode?: 'decimal' | 'numeric' | undefined;
  /** True where `save` makes no act: the text then stays on this device until its page lets it go. */
  holds?: boolean | undefined;
};

/** A line that stands for a value: kept once it can be read; what can’t be read stays as typed and is asked about. */
export function ReadField<Value>({
  label,
  note,
  written,
  read,
  save,
  readOnly,
  inputMode,
  holds = false,
}: ReadFieldProps<Value>) {
  const id = useId();
  const [doubtful, setDoubtful] = useState<{ text: string; message: string }>();
  const keep = (text: string) => {
    const line = text.trim() === '' ? undefined : read(text);
    setDoubtful(line === undefined || line.ok ? undefined : { text, message: line.message });
    if (line?.ok) save(line.value);
    else if (line === undefined && written !== '') save(undefined);
  };
  const typed = useTyped(label, doubtful?.text ?? written, keep, holds);
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
        inputMode={inputMode}
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
