import { z } from 'zod';
import { setsLikeness } from '../../../calculations/setsLikeness.ts';
import { formatBoth, formatMm } from '../../../units/length.ts';
import { useDraft } from '../../drawer/useDraft.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { type BenchContext, type Found, faultWords, findingsOf } from '../benchContext.ts';
import { ResultSheet } from '../ResultSheet.tsx';
import { runHere } from '../runHere.ts';
import { DotsFigure } from './DotsFigure.tsx';
import { type Likeness, likenessWords } from './likenessWords.ts';
import { MemberGrid } from './MemberGrid.tsx';
import { emptyTable, isBlank, membersOf, tableFaults } from './readMembers.ts';
import './sets.css';

const draftShape = z.object({
  columns: z.array(z.string()).min(1),
  rows: z.array(z.object({ id: z.string(), kind: z.string(), cells: z.array(z.string()) })),
  source: z.enum(['measured', 'catalogue']),
});
type Draft = z.infer<typeof draftShape>;

/** Members of a set side by side: who stands out, who goes together, and how wide the armchairs are. */
export function MembersTool({ context }: { context: BenchContext }) {
  const [draft, type] = useDraft<Draft>(`${context.piece.id}.members`, draftShape, () => ({
    ...emptyTable(),
    source: 'measured' as const,
  }));
  const members = membersOf(draft);
  const faults = tableFaults(draft);
  const input = { members, source: draft.source };
  const result = members.length < 2 ? undefined : runHere(setsLikeness, input, context.knowledge);
  const seat = result?.ok && result.output.judged ? result.output.armchairWidth.seat : undefined;
  const findings =
    seat &&
    findingsOf(context, { from: 'sets.likeness', differenceMm: seat.differenceMm, sigmaMm: seat.sigmaMm });
  const found: Found | undefined = result?.ok
    ? {
        calculation: setsLikeness,
        input,
        output: result.output,
        says: likenessWords(result.output),
        marks: draft,
        findings,
      }
    : undefined;
  return (
    <div className="stack">
      <p className="said">
        Type the measures of each member, or paste them from a spreadsheet: 21 5/8, 549 mm. What is typed
        stays here.
      </p>
      <KeptTables context={context} isBlank={isBlank(draft)} onTake={type} />
      <MemberGrid table={draft} onType={(table) => type({ ...draft, ...table })} />
      <ChoiceField
        label="Where the sizes come from"
        value={draft.source}
        save={(source) => type({ ...draft, source })}
        choices={[
          { id: 'measured', name: 'Measured on the pieces', note: 'To a sixteenth of an inch or so.' },
          { id: 'catalogue', name: 'Out of a catalogue', note: 'Rough to about 2 cm: no verdict.' },
        ]}
      />
      {(faults.length > 0 || result?.ok === false) && (
        <div className="caution" role="alert">
          {faults.slice(0, 3).map((fault) => (
            <p key={fault}>{fault}</p>
          ))}
          {result?.ok === false && <p>{faultWords(result.faults)}</p>}
        </div>
      )}
      {members.length < 2 && (
        <p className="soft" role="status">
          Two members with a measure each are needed before anything can be said.
        </p>
      )}
      {found !== undefined && result?.ok && (
        <>
          <DotsFigure members={members} columns={draft.columns} outliers={result.output.outliers} />
          <Spreads spreads={result.output.spreads} />
          <ul className="small">
            {result.output.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
          <ResultSheet context={context} found={found} title={`${members.length} members side by side`} />
          {findings !== undefined && (
            <p className="small soft">
              Enter it only where the piece examined here is the armchair of the set: the finding is of this
              piece.
            </p>
          )}
        </>
      )}
    </div>
  );
}

type KeptProps = { context: BenchContext; isBlank: boolean; onTake: (draft: Draft) => void };

/** Tables kept at the bench before, to be taken up again as they were typed. */
function KeptTables({ context, isBlank, onTake }: KeptProps) {
  const kept = Object.values(context.piece.bench).flatMap(({ id, title, calculation, marks }) => {
    const read = calculation === setsLikeness.id ? draftShape.safeParse(marks) : undefined;
    return read?.success ? [{ id, title, draft: read.data }] : [];
  });
  if (kept.length === 0 || !isBlank) return null;
  return (
    <div className="row">
      {kept.map(({ id, title, draft }) => (
        <button key={id} type="button" className="button quiet" onClick={() => onTake(draft)}>
          Take up again: {title}
        </button>
      ))}
    </div>
  );
}

function Spreads({ spreads }: { spreads: Likeness['spreads'] }) {
  return (
    <details>
      <summary>Spread of each measure</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard */}
      <section className="sets-scroll" aria-label="Spread of each measure" tabIndex={0}>
        <table className="plot-table">
          <caption>Kind by kind</caption>
          <thead>
            <tr>
              {['Kind', 'Measure', 'How many', 'Median', 'Standard deviation', 'From least to most'].map(
                (name) => (
                  <th scope="col" key={name}>
                    {name}
                  </th>
                ),
              )}
            </tr>
          </thead>
          <tbody>
            {spreads.map((each) => (
              <tr key={`${each.kind} ${each.measure}`}>
                <td>{each.kind}</td>
                <th scope="row">{each.measure}</th>
                <td>{each.count}</td>
                <td>{formatBoth(each.medianMm)}</td>
                <td>{formatMm(each.sdMm, 1)}</td>
                <td>{formatMm(each.rangeMm, 1)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}
