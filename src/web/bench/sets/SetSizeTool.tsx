import { useId } from 'react';
import { z } from 'zod';
import { setsSize } from '../../../calculations/sets.ts';
import { useDraft } from '../../drawer/useDraft.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { type BenchContext, type Found, faultWords } from '../benchContext.ts';
import { ResultSheet } from '../ResultSheet.tsx';
import { runHere } from '../runHere.ts';
import { readNumerals } from './readNumerals.ts';
import { SizeFigure } from './SizeFigure.tsx';
import { sizeWords, turnedWords } from './sizeWords.ts';
import './sets.css';

const draftShape = z.object({
  text: z.string(),
  first: z.enum(['one', 'unknown']),
  max: z.number().optional(),
});

/** How many pieces a set had, from the numbers on those that are left. */
export function SetSizeTool({ context }: { context: BenchContext }) {
  const id = useId();
  const [draft, type] = useDraft(`${context.piece.id}.set-size`, draftShape, () => ({
    text: '',
    first: 'one' as const,
  }));
  const { numbers, unread } = readNumerals(draft.text);
  const input = {
    numbersSeen: numbers.map(({ value }) => value),
    first: draft.first,
    ...(draft.max === undefined ? {} : { prior: { max: draft.max } }),
  };
  const result = numbers.length === 0 ? undefined : runHere(setsSize, input, context.knowledge);
  const found: Found | undefined = result?.ok
    ? {
        calculation: setsSize,
        input,
        output: result.output,
        says: sizeWords(result.output, numbers),
        marks: draft.text,
      }
    : undefined;
  const turned = turnedWords(numbers);
  return (
    <div className="stack">
      <div className="field">
        <label htmlFor={id}>Numbers found on seat frames, rails and seats</label>
        <span className="note" id={`${id}-note`}>
          As they are cut or written: III, V, VIII, or 3, 5, 8. Each piece of the set once.
        </span>
        <input
          id={id}
          type="text"
          autoComplete="off"
          value={draft.text}
          aria-describedby={`${id}-note ${id}-read`}
          onChange={(change) => type({ ...draft, text: change.target.value })}
        />
        <span id={`${id}-read`} role="status" className="small">
          {numbers.length > 0 && `Read as ${numbers.map(({ value }) => value).join(', ')}. `}
          {unread.length > 0 && (
            <span className="doubt">
              Not read: {unread.join(', ')}. Write each number as 8 or VIII, with commas between.
            </span>
          )}
        </span>
      </div>
      {turned !== '' && <p className="caution">{turned}</p>}
      <div className="bench-fields">
        <ChoiceField
          label="Does the numbering begin with one?"
          value={draft.first}
          save={(first) => type({ ...draft, first })}
          choices={[
            { id: 'one', name: 'Yes', note: 'The maker’s own numbers of a set.' },
            { id: 'unknown', name: 'Not known', note: 'Inventory numbers of a house, or a later hand.' },
          ]}
        />
        <NumberField
          label="The largest size you think possible"
          unit="pieces"
          note="May be left empty where two or more numbers are seen."
          begin={draft.max}
          min={1}
          max={100_000}
          onNumber={(max) => {
            const { max: _, ...rest } = draft;
            type(max === undefined ? rest : { ...rest, max: Math.round(max) });
          }}
        />
      </div>
      {numbers.length === 0 && (
        <p className="said">
          Turn the seats over and note the numbers on the frames and rails: from them follows how large the
          set was, and so how much of it is gone.
        </p>
      )}
      {result?.ok === false && (
        <p className="caution" role="alert">
          {result.faults.some(({ code }) => code === 'sets.prior-needed')
            ? `${numbers.length === 1 ? 'One number sets' : 'So few numbers set'} no upper end: write the largest size you think possible.`
            : faultWords(result.faults)}
        </p>
      )}
      {found !== undefined && result?.ok && (
        <>
          <SizeFigure size={result.output} />
          <ResultSheet
            context={context}
            found={found}
            title={`Set with ${numbers.map(({ text }) => text).join(', ')}`}
          />
        </>
      )}
      <p className="small soft">
        It takes for granted that the pieces were numbered on from one, and that which are left has nothing to
        do with their numbers. A set divided among heirs by number, or numbered across several rooms, breaks
        that.
      </p>
    </div>
  );
}
