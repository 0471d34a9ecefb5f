import { useId } from 'react';
import { formatBoth, parseLength } from '../../units/length.ts';
import { useKeptLine } from './useKeptLine.ts';

type LengthFieldProps = {
  label: string;
  note?: string;
  /** What stands in it at first, as it was written. */
  begin?: string;
  /** Told the length as it is typed; undefined while the field is empty or can't be read. */
  onLength: (mm: number | undefined) => void;
};

/** A length as the trade writes it, read back at once in both units. */
export function LengthField({ label, note, begin = '', onLength }: LengthFieldProps) {
  const id = useId();
  const [text, type] = useKeptLine(label, begin, (line) => {
    const now = line.trim() === '' ? undefined : parseLength(line);
    onLength(now?.ok ? now.mm : undefined);
  });
  const read = text.trim() === '' ? undefined : parseLength(text);
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {note === undefined ? null : <span className="note">{note}</span>}
      <span className="bench-length">
        <input
          id={id}
          type="text"
          autoComplete="off"
          value={text}
          aria-invalid={read?.ok === false}
          aria-describedby={`${id}-says`}
          onChange={(change) => type(change.target.value)}
        />
        <output htmlFor={id}>{read?.ok ? formatBoth(read.mm, { denominator: 64 }) : ''}</output>
      </span>
      <span className="doubt" id={`${id}-says`} role="status">
        {read?.ok === false ? read.message : ''}
      </span>
    </div>
  );
}
