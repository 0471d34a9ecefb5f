import { type ReactNode, useId } from 'react';

export type Choice<Id extends string> = { id: Id; name: string; note?: string; picture?: ReactNode };

type ChoiceFieldProps<Id extends string> = {
  label: string;
  note?: string;
  choices: readonly Choice<Id>[];
  value: Id | undefined;
  save: (id: Id) => void;
  readOnly?: boolean | undefined;
};

/** One of several, in words: each a whole line to touch. */
export function ChoiceField<Id extends string>({
  label,
  note,
  choices,
  value,
  save,
  readOnly,
}: ChoiceFieldProps<Id>) {
  const group = useId();
  return (
    <fieldset className="choice-field">
      <legend>{label}</legend>
      {note === undefined ? null : <p className="soft small">{note}</p>}
      <div className="choices">
        {choices.map((choice) => (
          <label key={choice.id} className={choice.picture === undefined ? 'choice' : 'choice pictured'}>
            <input
              type="radio"
              name={group}
              checked={value === choice.id}
              disabled={readOnly === true && value !== choice.id}
              onChange={() => readOnly || save(choice.id)}
            />
            <span className="choice-words">
              {choice.picture}
              <span>{choice.name}</span>
              {choice.note === undefined ? null : <span className="soft small">{choice.note}</span>}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
