import { stateNames } from '../../../knowledge/stateNames.ts';
import { statesOf } from './causesToChoose.ts';
import type { Draft } from './draft.ts';
import { FieldSet, useFieldFaults } from './FieldFrame.tsx';
import { FigureInputs } from './FigureInputs.tsx';

type FiguresFieldProps = {
  path: string;
  hangsOn: unknown;
  value: unknown;
  onValue: (value: unknown) => void;
};

/** The figures of a sign, one for each state of what it hangs on. */
export function FiguresField({ path, hangsOn, value, onValue }: FiguresFieldProps) {
  const now = (value ?? {}) as Draft;
  const { must, may } = statesOf(hangsOn);
  return (
    <FieldSet path={path} required within={false}>
      {must.length === 0 ? (
        <p className="soft">
          First say what makes the sign appear: the figures that are wanted follow from it.
        </p>
      ) : null}
      {[...must, ...may].map((state) => (
        <StateFigure
          key={state}
          path={`${path}.${state}`}
          name={`${stateNames[state] ?? state}${may.includes(state) ? ' (may stay blank)' : ''}`}
          figure={now[state]}
          onFigure={(figure) => onValue({ ...withOnly(now, [...must, ...may]), [state]: figure })}
        />
      ))}
    </FieldSet>
  );
}

type StateFigureProps = { path: string; name: string; figure: unknown; onFigure: (figure: unknown) => void };

function StateFigure({ path, name, figure, onFigure }: StateFigureProps) {
  const faults = useFieldFaults(path, true);
  return (
    <fieldset className="own-figure" data-faulty={faults.length > 0 ? '' : undefined}>
      <legend>{name}</legend>
      <FigureInputs figure={figure} onFigure={onFigure} />
      {faults.length === 0 ? null : <span className="doubt">{faults.join(' ')}</span>}
    </fieldset>
  );
}

/** Figures of states that belong to another cause fall away once one is typed for this one. */
function withOnly(figures: Draft, states: readonly string[]): Draft {
  return Object.fromEntries(Object.entries(figures).filter(([state]) => states.includes(state)));
}
