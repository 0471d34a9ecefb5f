import type { ReactNode } from 'react';
import type { Draft } from './draft.ts';
import { FieldFrame, FieldSet } from './FieldFrame.tsx';
import { FigureInputs } from './FigureInputs.tsx';
import type { FieldShape } from './fieldShapes.ts';
import { optionWords } from './ownWords.ts';

export type FieldProps = {
  field: FieldShape;
  path: string;
  value: unknown;
  onValue: (value: unknown) => void;
};

/**
 * One field of an entry, drawn from its shape alone: whatever the schema gains later is asked for as well. `own` may
 * draw a field in a way of its own; where it answers nothing the field is drawn by its shape. Lists of entries and tables of
 * figures have no shape to draw by and need a way of their own: a test names those there are.
 */
export function FieldByShape(props: FieldProps & { own?: (props: FieldProps) => ReactNode | undefined }) {
  const { field, path, value, onValue, own } = props;
  const special = own?.({ field, path, value, onValue });
  if (special !== undefined) return special;
  switch (field.as) {
    case 'object':
      return <ObjectField {...props} fields={field.fields} />;
    case 'rows':
      return null;
    case 'several':
      return <SeveralField {...props} options={field.options} />;
    case 'years':
      return <YearsPair {...props} />;
    case 'flag':
      return <FlagField {...props} />;
    case 'figure':
      return (
        <FieldSet path={path} required={field.required} within>
          <FigureInputs figure={value} onFigure={onValue} />
        </FieldSet>
      );
    case 'figures':
      return null;
    default:
      return (
        <FieldFrame path={path} required={field.required}>
          {(attributes) => {
            if (field.as === 'choice')
              return (
                <select
                  {...attributes}
                  value={textOf(value)}
                  onChange={(change) => onValue(change.target.value)}
                >
                  <option value="">Not said</option>
                  {field.options.map((option) => (
                    <option key={option} value={option}>
                      {optionWords(option)}
                    </option>
                  ))}
                </select>
              );
            if (field.as === 'text' && field.sentence)
              return (
                <textarea
                  {...attributes}
                  rows={3}
                  value={textOf(value)}
                  onChange={(change) => onValue(change.target.value)}
                />
              );
            return (
              <input
                {...attributes}
                type="text"
                autoComplete="off"
                inputMode={field.as === 'number' ? 'decimal' : undefined}
                value={field.as === 'list' ? listText(value) : textOf(value)}
                onChange={(change) =>
                  onValue(field.as === 'list' ? listOf(change.target.value) : change.target.value)
                }
              />
            );
          }}
        </FieldFrame>
      );
  }
}

function ObjectField(
  props: FieldProps & { fields: readonly FieldShape[]; own?: (props: FieldProps) => ReactNode | undefined },
) {
  const { field, path, value, onValue, fields, own } = props;
  const now = (value ?? {}) as Draft;
  return (
    <FieldSet path={path} required={field.required} within={false}>
      <div className="own-fields">
        {fields.map((inner) => (
          <FieldByShape
            key={inner.name}
            field={inner}
            path={`${path}.${inner.name}`}
            value={now[inner.name]}
            onValue={(changed) => onValue({ ...now, [inner.name]: changed })}
            {...(own === undefined ? {} : { own })}
          />
        ))}
      </div>
    </FieldSet>
  );
}

function SeveralField({ field, path, value, onValue, options }: FieldProps & { options: readonly string[] }) {
  const chosen = Array.isArray(value) ? (value as string[]) : [];
  return (
    <FieldSet path={path} required={field.required} within>
      <div className="choices">
        {options.map((option) => (
          <label key={option} className="choice">
            <input
              type="checkbox"
              checked={chosen.includes(option)}
              onChange={(change) =>
                onValue(change.target.checked ? [...chosen, option] : chosen.filter((one) => one !== option))
              }
            />
            {optionWords(option)}
          </label>
        ))}
      </div>
    </FieldSet>
  );
}

function YearsPair({ field, path, value, onValue }: FieldProps) {
  const [from, to] = Array.isArray(value) ? value.map(textOf) : ['', ''];
  return (
    <FieldSet path={path} required={field.required} within>
      <div className="figure-inputs">
        {(
          [
            ['From', from, to],
            ['To', to, from],
          ] as const
        ).map(([name, year = '', other = '']) => (
          <label key={name}>
            {name}
            <input
              type="text"
              inputMode="numeric"
              autoComplete="off"
              value={year}
              onChange={(change) =>
                onValue(name === 'From' ? [change.target.value, other] : [other, change.target.value])
              }
            />
          </label>
        ))}
      </div>
    </FieldSet>
  );
}

function FlagField({ path, value, onValue, field }: FieldProps) {
  return (
    <FieldFrame path={path} required={field.required}>
      {(attributes) => (
        <input
          {...attributes}
          type="checkbox"
          checked={value === true}
          onChange={(change) => onValue(change.target.checked)}
        />
      )}
    </FieldFrame>
  );
}

function textOf(value: unknown): string {
  return value === undefined || value === null ? '' : String(value);
}

/** Items parted by commas, kept as they are typed until the entry is made. */
function listText(value: unknown): string {
  return Array.isArray(value) ? value.join(',') : textOf(value);
}

function listOf(text: string): string[] {
  return text === '' ? [] : text.split(',');
}
