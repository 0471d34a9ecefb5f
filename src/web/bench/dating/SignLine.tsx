import { type TypedSign, yearNames } from './readSigns.ts';
import { TextInput } from './TextInput.tsx';

type Props = {
  typed: TypedSign;
  at: number;
  knownName: string | undefined;
  onType: (typed: TypedSign) => void;
  onDrop: () => void;
};

/** One dated sign: of the knowledge files, by its name only; one's own, with its years. */
export function SignLine({ typed, at, knownName, onType, onDrop }: Props) {
  const name = knownName ?? (typed.name || `Sign ${at + 1}`);
  return (
    <li className="dating-sign">
      {typed.sign === '' ? (
        <fieldset className="dating-years">
          <legend className="unseen">{name}</legend>
          <TextInput
            label="What it is"
            value={typed.name}
            onType={(text) => onType({ ...typed, name: text })}
          />
          {(Object.keys(yearNames) as (keyof typeof yearNames)[]).map((which) => (
            <TextInput
              key={which}
              label={yearNames[which]}
              isYear
              value={typed[which]}
              onType={(text) => onType({ ...typed, [which]: text })}
            />
          ))}
        </fieldset>
      ) : (
        <strong>{name}</strong>
      )}
      <button type="button" className="button plain small" aria-label={`Remove “${name}”`} onClick={onDrop}>
        Remove
      </button>
    </li>
  );
}
