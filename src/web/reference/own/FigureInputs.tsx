import { type FigureTyped, figureTyped, figureWith } from './draft.ts';

type FigureInputsProps = { figure: unknown; onFigure: (figure: unknown) => void };

const inputs: readonly (readonly [keyof FigureTyped, string])[] = [
  ['best', 'Best'],
  ['low', 'Lowest'],
  ['high', 'Highest'],
];

/** A figure of 100 as three numbers: best, lowest and highest believable. */
export function FigureInputs({ figure, onFigure }: FigureInputsProps) {
  const typed = figureTyped(figure);
  return (
    <div className="figure-inputs">
      {inputs.map(([which, name]) => (
        <label key={which}>
          {name}
          <input
            type="text"
            inputMode="decimal"
            autoComplete="off"
            value={typed[which]}
            onChange={(change) =>
              onFigure(
                figureWith(figure, { ...typed, [which]: change.target.value.replaceAll(/[^\d.]/g, '') }),
              )
            }
          />
        </label>
      ))}
    </div>
  );
}
