import { Link } from '@tanstack/react-router';
import { capital } from '../../ground/words.ts';
import { readingWords } from '../../piece/readings.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import { partName } from '../drawer/partName.ts';
import { readVisit } from '../examination/keptVisit.ts';
import { placeToHash } from '../examination/placeInHash.ts';
import { inPhotos, planLooks, sayMinutes, sayNeed } from '../examination/planLooks.ts';
import { type ReadingsContext, signName } from './readingsContext.ts';

type Props = { context: ReadingsContext; full: boolean; nextLooks: Weighing['nextLooks'] };

/** What to look at next, and which findings would turn the reading if they were otherwise. */
export function LooksAndChanges({ context, full, nextLooks }: Props) {
  const { weighing, knowledge, parts, piece } = context;
  const fromPhotos = piece.mode === 'photo-only';
  const plan = planLooks(nextLooks, {
    minutes: undefined,
    mayNot: (fromPhotos ? undefined : readVisit(piece.id)?.mayNot) ?? [],
  }).slice(0, 8);
  const name = (sign: string, part: string | null) =>
    `“${signName(knowledge, sign)}” on ${partName(parts, part)}`;
  return (
    <div className="read-two">
      <section className="stack-tight">
        <h2>What to look at next</h2>
        {plan.length === 0 && (
          <p className="soft">
            {full ? 'Nothing that was not looked at would tell more.' : 'Being worked out.'}
          </p>
        )}
        <ol className="read-looks">
          {plan.map(({ look }) => (
            <li key={`${look.sign}@${look.part}`}>
              <Link
                to="/piece/$id/examination"
                params={{ id: piece.id }}
                hash={placeToHash({ part: look.part ?? 'whole', sign: look.sign })}
                className="read-way said"
              >
                {signName(knowledge, look.sign)}
              </Link>
              <span className="small soft">
                {capital(partName(parts, look.part))} · {sayMinutes(look.minutes)} ·{' '}
                {fromPhotos ? inPhotos : sayNeed(look.needs)}
              </span>
              {look.caution !== undefined && <span className="caution small">{look.caution}</span>}
            </li>
          ))}
        </ol>
      </section>
      <section className="stack-tight">
        <h2>What would change it</h2>
        {weighing.wouldChange.length === 0 ? (
          <p className="soft">{full ? weighing.wouldChangeTried : 'Being worked out.'}</p>
        ) : (
          <ul className="stack-tight">
            {weighing.wouldChange.map((change) => (
              <li key={change.findings.map((each) => `${each.sign}@${each.part}`).join()}>
                If{' '}
                {change.findings
                  .map((each) => `${name(each.sign, each.part)} had ${each.otherwise}`)
                  .join(' and ')}
                : {readingWords[change.to].inSentence}.
              </li>
            ))}
          </ul>
        )}
      </section>
    </div>
  );
}
