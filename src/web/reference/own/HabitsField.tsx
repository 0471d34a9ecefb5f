import { useKnowledge } from '../../knowledge/useKnowledge.ts';
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
                onChange={(pick) => change(at, { ...habit, sign: pick.target.value })}
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
          <FieldSet path={`${path}.${at}.shows`} required within>
            <FigureInputs figure={habit.shows} onFigure={(shows) => change(at, { ...habit, shows })} />
          </FieldSet>
          <button
            type="button"
            className="button plain"
            onClick={() => onValue(habits.filter((_, index) => index !== at))}
          >
            Take this habit out
          </button>
        </div>
      ))}
      <button type="button" className="button quiet" onClick={() => onValue([...habits, {}])}>
        Add a habit
      </button>
    </FieldSet>
  );
}
