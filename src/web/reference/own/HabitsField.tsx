import { capital } from '../../../ground/words.ts';
import { useKnowledge } from '../../knowledge/useKnowledge.ts';
import { kindWords } from '../plainWords.ts';
import type { Draft } from './draft.ts';
import { FieldFrame, FieldSet } from './FieldFrame.tsx';
import { FigureInputs } from './FigureInputs.tsx';

type HabitsFieldProps = { path: string; value: unknown; onValue: (habits: Draft[]) => void };

/** The habits of a shop: a sign that hangs on the making, where it is seen, and how often it shows in work from here. */
export function HabitsField({ path, value, onValue }: HabitsFieldProps) {
  const { signs } = useKnowledge();
  const habits = Array.isArray(value) ? (value as Draft[]) : [];
  const ofMaking = Object.values(signs)
    .filter((sign) => sign.hangsOn === 'making')
    .sort((a, b) => a.name.localeCompare(b.name));
  const change = (at: number, to: Draft) =>
    onValue(habits.map((habit, index) => (index === at ? to : habit)));
  return (
    <FieldSet path={path} required within={false}>
      {habits.map((habit, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a habit has no name of its own until its sign is chosen
        <div key={at} className="own-habit sheet">
          <FieldFrame path={`${path}.${at}.sign`} required>
            {(attributes) => (
              <select
                {...attributes}
                value={String(habit.sign ?? '')}
                onChange={(pick) => change(at, { ...habit, sign: pick.target.value, on: [] })}
              >
                <option value="">Choose a sign</option>
                {ofMaking.map((sign) => (
                  <option key={sign.id} value={sign.id}>
                    {sign.name}
                  </option>
                ))}
              </select>
            )}
          </FieldFrame>
          <HabitParts
            path={`${path}.${at}.on`}
            kinds={signs[String(habit.sign ?? '')]?.on ?? []}
            value={habit.on}
            onKinds={(on) => change(at, { ...habit, on })}
          />
          <FieldSet path={`${path}.${at}.shows`} required within>
            <FigureInputs figure={habit.shows} onFigure={(shows) => change(at, { ...habit, shows })} />
          </FieldSet>
          <button
            type="button"
            className="button plain"
            onClick={() => onValue(habits.filter((_, index) => index !== at))}
          >
            Remove this habit
          </button>
        </div>
      ))}
      <button type="button" className="button quiet" onClick={() => onValue([...habits, {}])}>
        Add a habit
      </button>
    </FieldSet>
  );
}

type HabitPartsProps = {
  path: string;
  kinds: readonly string[];
  value: unknown;
  onKinds: (kinds: string[]) => void;
};

/** The parts a habit is seen on, out of those its sign can be on; all of them where none is chosen. */
function HabitParts({ path, kinds, value, onKinds }: HabitPartsProps) {
  const chosen = Array.isArray(value) ? (value as string[]) : [];
  if (kinds.length < 2) return null;
  return (
    <FieldSet path={path} required={false} within>
      <details open={chosen.length > 0 || undefined}>
        <summary>{chosen.length === 0 ? 'On all of its parts' : chosen.map(kindWords).join(', ')}</summary>
        <div className="choices">
          {kinds.map((kind) => (
            <label key={kind} className="choice">
              <input
                type="checkbox"
                checked={chosen.includes(kind)}
                onChange={(tick) =>
                  onKinds(tick.target.checked ? [...chosen, kind] : chosen.filter((one) => one !== kind))
                }
              />
              {capital(kindWords(kind))}
            </label>
          ))}
        </div>
      </details>
    </FieldSet>
  );
}
