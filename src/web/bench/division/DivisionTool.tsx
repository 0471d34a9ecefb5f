import { useDeferredValue, useMemo } from 'react';
import { worthDivision } from '../../../calculations/worthDivision.ts';
import { formatMoney } from '../../../units/money.ts';
import { type DivisionMethod, divisionMethods } from '../../../worth/divideEstate.ts';
import { useDraft } from '../../drawer/useDraft.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { type BenchContext, type Found, faultWords } from '../benchContext.ts';
import { ResultSheet } from '../ResultSheet.tsx';
import { runHere } from '../runHere.ts';
import { BidTable } from './BidTable.tsx';
import { type Division, divisionWords, propertyWords, shareLines } from './divisionWords.ts';
import { askedDivision, draftShape, emptyDivision } from './readDivision.ts';
import './division.css';

const methods: Record<DivisionMethod, { name: string; note: string }> = {
  'sealed-bids': {
    name: 'Sealed bids',
    note: 'Each writes what every piece is worth to them in money; the highest bid takes it, and money makes it even.',
  },
  'adjusted-winner': {
    name: 'Points, for two heirs',
    note: 'Each spreads the same number of points, 100 for instance; one piece at most has to be shared or sold. No money.',
  },
  maximin: {
    name: 'Whole pieces, no money',
    note: 'The one who gets least, by their own figures, gets as much as can be.',
  },
};

/** Divides several pieces among heirs, with what the division guarantees. */
export function DivisionTool({ context }: { context: BenchContext }) {
  const [draft, type] = useDraft(`${context.piece.id}.division`, draftShape, emptyDivision);
  // A hard division takes a second or two: the letters typed go first, and nothing is divided twice.
  const settledDraft = useDeferredValue(draft);
  const { knowledge } = context;
  const { asked, lacking, result } = useMemo(() => {
    const read = askedDivision(settledDraft);
    return { ...read, result: read.asked && runHere(worthDivision, read.asked, knowledge) };
  }, [settledDraft, knowledge]);
  const found: Found | undefined =
    result?.ok && asked !== undefined
      ? {
          calculation: worthDivision,
          input: asked,
          output: result.output,
          says: divisionWords(result.output, methods[asked.method].name.toLowerCase()),
          marks: settledDraft,
        }
      : undefined;
  return (
    <div className="stack">
      <p className="said">
        Each heir writes for themselves, and nobody sees the others’ figures before all are in: whoever knows
        them can gain by writing falsely. What is typed stays on this device until it is kept.
      </p>
      <ChoiceField
        label="How it is divided"
        choices={divisionMethods.map((id) => ({ id, ...methods[id] }))}
        value={draft.method}
        save={(method) => type({ ...draft, method })}
      />
      <BidTable draft={draft} type={type} />
      {lacking?.slice(0, 3).map((each) => (
        <p key={each} className="small doubt" role="status">
          {each}
        </p>
      ))}
      {result?.ok === false && (
        <p className="caution" role="alert">
          {faultWords(result.faults)}
        </p>
      )}
      {found !== undefined && result?.ok ? (
        <>
          <Outcome found={result.output} method={settledDraft.method} />
          <ResultSheet context={context} found={found} title="Division among heirs" />
        </>
      ) : null}
      <p className="small soft">
        How heirs may divide is a matter of the will and of local law. This divides by what the heirs wrote,
        and knows no price.
      </p>
    </div>
  );
}

function Outcome({ found, method }: { found: Division; method: DivisionMethod }) {
  const asSum = (sum: number) =>
    method === 'sealed-bids' ? formatMoney(Math.round(sum * 100)) : String(Math.round(sum * 100) / 100);
  return (
    <section className="stack-tight" aria-label="The division">
      <dl className="division-shares">
        {shareLines(found).map(({ heir, words }) => (
          <div key={heir}>
            <dt>{heir}</dt>
            <dd>
              {words}.{' '}
              <span className="soft">
                By their own figures {asSum(found.ownValue[heir] ?? 0)}; an equal part would be{' '}
                {asSum(found.fairShare[heir] ?? 0)}.
              </span>
            </dd>
          </div>
        ))}
      </dl>
      <ul>
        {found.properties.map((each) => (
          <li key={each}>
            {propertyWords[each]}{' '}
            <span className="soft small">
              {found.guaranteed.includes(each)
                ? 'This way of dividing always gives that.'
                : 'It is so this time.'}
            </span>
          </li>
        ))}
        {found.envy.map(({ heir, of, by }) => (
          <li key={`${heir} ${of}`} className="doubt">
            {heir} would rather have {of}’s share, by {asSum(by)}.
          </li>
        ))}
      </ul>
      {found.proved ? null : (
        <p className="caution">
          The search was stopped before it was sure that nothing better is there: divide fewer pieces at once.
        </p>
      )}
    </section>
  );
}
