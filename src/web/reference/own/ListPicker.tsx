import { useId, useState } from 'react';
import { FieldFrame } from './FieldFrame.tsx';
import { type Pickable, pickFrom } from './pickFrom.ts';

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
  const [doubt, setDoubt] = useState('');
  const chosen = Array.isArray(value) ? (value as string[]) : [];
  const nameOf = (id: string) => options.find((option) => option.id === id)?.name ?? id;
  const take = (id: string) => {
    setTyped('');
    setDoubt('');
    if (!chosen.includes(id)) onValue([...chosen, id]);
  };
  const type = (text: string) => {
    const named = options.find((option) => option.name === text.trim());
    setDoubt('');
    if (named === undefined) setTyped(text);
    else take(named.id);
  };
  const leave = (text: string) => {
    if (text.trim() === '') return;
    const picked = ownWords
      ? { id: options.find((option) => option.name === text.trim())?.id ?? text.trim() }
      : pickFrom(options, text);
    if ('id' in picked) take(picked.id);
    else setDoubt(picked.doubt);
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
                    aria-label={`Remove: ${nameOf(id)}`}
                    onClick={() => onValue(chosen.filter((one) => one !== id))}
                  >
                    Remove
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
            onChange={(change) => type(change.target.value)}
            onBlur={(left) => leave(left.target.value)}
            onKeyDown={(key) => {
              // Enter takes what was typed; it does not keep the whole entry.
              if (key.key !== 'Enter' || typed.trim() === '') return;
              key.preventDefault();
              leave(typed);
            }}
          />
          <span className="doubt" role="status">
            {doubt}
          </span>
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
