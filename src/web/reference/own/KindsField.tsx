import { capital } from '../../../ground/words.ts';
import { useKnowledge } from '../../knowledge/useKnowledge.ts';
import { kindWords } from '../plainWords.ts';
import { kindsToChoose } from '../signFilters.ts';
import { FieldSet } from './FieldFrame.tsx';

type KindsFieldProps = {
  path: string;
  required: boolean;
  value: unknown;
  onValue: (kinds: string[]) => void;
};

/** The kinds of part, to tick: first the piece as a whole and the groups that stand for several kinds, then each kind. */
export function KindsField({ path, required, value, onValue }: KindsFieldProps) {
  const { forms, partGroups = {} } = useKnowledge();
  const chosen = Array.isArray(value) ? (value as string[]) : [];
  const groups = Object.entries(partGroups).sort(([a], [b]) => (a < b ? -1 : 1));
  const kinds = kindsToChoose(forms, undefined).slice(1);
  const tick = (id: string, name: string) => (
    <label key={id} className="choice">
      <input
        type="checkbox"
        checked={chosen.includes(id)}
        onChange={(change) =>
          onValue(change.target.checked ? [...chosen, id] : chosen.filter((one) => one !== id))
        }
      />
      {name}
    </label>
  );
  return (
    <FieldSet path={path} required={required} within>
      {chosen.length === 0 ? null : <p className="small">Chosen: {chosen.map(kindWords).join(', ')}. </p>}
      <div className="choices">{tick('whole', 'The piece as a whole')}</div>
      <details open={chosen.some((id) => partGroups[id] !== undefined) || undefined}>
        <summary>Groups of parts</summary>
        <div className="choices">
          {groups.map(([id, of]) => tick(id, `${capital(kindWords(id))} (${of.length} kinds)`))}
        </div>
      </details>
      <details open={chosen.some((id) => kinds.includes(id)) || undefined}>
        <summary>Single kinds of part</summary>
        <div className="choices">{kinds.map((id) => tick(id, capital(kindWords(id))))}</div>
      </details>
    </FieldSet>
  );
}
