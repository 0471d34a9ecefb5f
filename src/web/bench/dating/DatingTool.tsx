import { z } from 'zod';
import { datingSpanCalculation } from '../../../calculations/dating.ts';
import { useDraft } from '../../drawer/useDraft.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { PickField } from '../../fields/PickField.tsx';
import { type BenchContext, type Found, faultWords } from '../benchContext.ts';
import { ResultSheet } from '../ResultSheet.tsx';
import { runHere } from '../runHere.ts';
import { DatingFigure } from './DatingFigure.tsx';
import { datingWords } from './datingWords.ts';
import { datedSigns, ownSign, signsToDate } from './readSigns.ts';
import { SignLine } from './SignLine.tsx';
import './dating.css';

const draftShape = z.object({
  signs: z.array(
    z.object({
      sign: z.string(),
      name: z.string(),
      earliest: z.string(),
      commonFrom: z.string(),
      commonUntil: z.string(),
      latest: z.string(),
    }),
  ),
  combine: z.enum(['product', 'sum']),
});
type Draft = z.infer<typeof draftShape>;

/** Dating by hand: a few dated signs, of the knowledge files or one's own, and the years they leave together. */
export function DatingTool({ context }: { context: BenchContext }) {
  const { knowledge } = context;
  const [draft, type] = useDraft<Draft>(`${context.piece.id}.dating`, draftShape, () => ({
    signs: [ownSign()],
    combine: 'product',
  }));
  const { signs, faults } = signsToDate(draft.signs);
  const input = { signs, combine: draft.combine };
  const result = signs.length === 0 ? undefined : runHere(datingSpanCalculation, input, knowledge);
  const nameOf = (sign: string) => knowledge.signs[sign]?.name ?? sign;
  const found: Found | undefined = result?.ok
    ? {
        calculation: datingSpanCalculation,
        input,
        output: result.output,
        says: datingWords(result.output, nameOf),
        marks: draft,
      }
    : undefined;
  return (
    <div className="stack">
      <p className="said">
        Add signs whose years are known: when each came into use and when it went out. What can’t be told is
        left empty; an end left empty is open.
      </p>
      <ol className="bare-list stack-tight">
        {draft.signs.map((each, at) => (
          <SignLine
            // biome-ignore lint/suspicious/noArrayIndexKey: a sign is its place; its name is being typed
            key={at}
            typed={each}
            at={at}
            knownName={each.sign === '' ? undefined : nameOf(each.sign)}
            onType={(next) =>
              type({ ...draft, signs: draft.signs.map((old, index) => (index === at ? next : old)) })
            }
            onDrop={() => type({ ...draft, signs: draft.signs.filter((_, index) => index !== at) })}
          />
        ))}
      </ol>
      <div className="bench-fields">
        <PickField
          label="Add a sign of the knowledge files"
          value=""
          options={[{ id: '', name: 'Choose a sign with years' }, ...datedSigns(knowledge.signs)]}
          onPick={(sign) =>
            sign !== '' && type({ ...draft, signs: [...draft.signs, { ...ownSign(), sign }] })
          }
        />
        <div className="row">
          <button
            type="button"
            className="button quiet"
            onClick={() => type({ ...draft, signs: [...draft.signs, ownSign()] })}
          >
            Add one of your own
          </button>
        </div>
      </div>
      <ChoiceField
        label="How they go together"
        value={draft.combine}
        save={(combine) => type({ ...draft, combine })}
        choices={[
          { id: 'product', name: 'All of one date', note: 'Signs of one piece or one part.' },
          { id: 'sum', name: 'Each with a date of its own', note: 'A house, a context, a group of things.' },
        ]}
      />
      {(faults.length > 0 || result?.ok === false) && (
        <div className="caution" role="alert">
          {faults.map((fault) => (
            <p key={fault}>{fault}</p>
          ))}
          {result?.ok === false && <p>{named(faultWords(result.faults), knowledge.signs)}</p>}
        </div>
      )}
      {found !== undefined && result?.ok && (
        <>
          <DatingFigure found={result.output} />
          <ResultSheet
            context={context}
            found={found}
            title={`Dated by ${signs.length === 1 ? 'one sign' : `${signs.length} signs`}`}
          />
        </>
      )}
      <p className="small soft">
        This stands apart from the readings, which date the piece by all its findings together.
      </p>
    </div>
  );
}

/** A fault names signs by their id; the screen by their name. */
function named(words: string, signs: BenchContext['knowledge']['signs']): string {
  return words.replace(/“([a-z0-9-]+)”/g, (whole, id: string) =>
    signs[id] === undefined ? whole : `“${signs[id].name}”`,
  );
}
