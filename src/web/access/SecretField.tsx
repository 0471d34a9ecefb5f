import { useId, useState } from 'react';

/** A line for a passphrase, hidden unless it is asked to be shown. It is kept nowhere. */
export function SecretField({
  label,
  note,
  value,
  change,
  autoComplete,
}: {
  label: string;
  note: string;
  value: string;
  change: (text: string) => void;
  autoComplete: 'current-password' | 'new-password';
}) {
  const id = useId();
  const [isShown, setShown] = useState(false);
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="note" id={`${id}-note`}>
        {note}
      </span>
      <input
        id={id}
        type={isShown ? 'text' : 'password'}
        value={value}
        aria-describedby={`${id}-note`}
        autoComplete={autoComplete}
        autoCapitalize="none"
        spellCheck={false}
        onChange={(typed) => change(typed.target.value)}
      />
      <label className="row">
        <input type="checkbox" checked={isShown} onChange={(tick) => setShown(tick.target.checked)} /> Show it
      </label>
    </div>
  );
}
