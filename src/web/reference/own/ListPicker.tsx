import { useId, useState } from 'react';
import { FieldFrame } from './FieldFrame.tsx';

export type Pickable = { id: string; name: string };

type ListPickerProps = {
  path: string;
  required: boolean;
  options: readonly Pickable[];
  value: unknown;
  onValue: (ids: string[]) => void;
  /** Words of one’s own may stand in the list beside what is picked. */
  ownWords?: boolean;
};

/** A list put together from a shelf: part of a name is typed, the entry picked from what is offered. */
export function ListPicker({ path, required, options, value, onValue, ownWords = false }: ListPickerProps) {
  const list = useId();
  const [typed, setTyped] = useState('');
  const chosen = Array.isArray(value) ? (value as string[]) : [];
  const nameOf = (id: string) => options.find((option) => option.id === id)?.name ?? id;
  const take = (text: string, leaving: boolean) => {
    const found = options.find((option) => option.name === text.trim())?.id;
    const id = found ?? (leaving && ownWords ? text.trim() : '');
    setTyped(id === '' && !(leaving && ownWords) ? text : '');
    if (id !== '' && !chosen.includes(id)) onValue([...chosen, id]);
  };
  return (
    <FieldFrame path={path} required={required}>
      {(attributes) => (
        <>
          {chosen.length === 0 ? null : (
            <ul className="bare-list picked">
              {chosen.map((id) => (
                <li key={id}>
                  <span>{nameOf(id)}</span>
                  <button
                    type="button"
                    className="button plain"
                    aria-label={`Take out: ${nameOf(id)}`}
                    onClick={() => onValue(chosen.filter((one) => one !== id))}
                  >
                    Take out
                  </button>
                </li>
              ))}
            </ul>
          )}
          <input
            {...attributes}
            type="text"
            autoComplete="off"
            list={list}
            value={typed}
            onChange={(change) => take(change.target.value, false)}
            onBlur={(leave) => take(leave.target.value, true)}
          />
          <datalist id={list}>
            {options
              .filter((option) => !chosen.includes(option.id))
              .map((option) => (
                <option key={option.id} value={option.name} />
              ))}
          </datalist>
        </>
      )}
    </FieldFrame>
  );
}
