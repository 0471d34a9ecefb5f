import { useId } from 'react';

type DayFieldProps = {
  label: string;
  note?: string;
  value: string | undefined;
  save: (day: string | undefined) => void;
  readOnly?: boolean;
};

/** A day; kept once it is a whole one, or emptied. */
export function DayField({ label, note, value, save, readOnly }: DayFieldProps) {
  const id = useId();
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
        type="date"
        key={value ?? 'none'}
        defaultValue={value ?? ''}
        readOnly={readOnly}
        aria-describedby={note === undefined ? undefined : `${id}-note`}
        onBlur={(leave) => {
          const day = leave.target.value;
          if (leave.target.validity.valid && (day === '' || isDay(day)) && day !== (value ?? ''))
            save(day || undefined);
        }}
      />
    </div>
  );
}

function isDay(text: string): boolean {
  return /^[12]\d{3}-\d{2}-\d{2}$/.test(text);
}
