import { lacksForWorth } from '../../engagement/lacksForWorth.ts';
import { type ApproachId, approachIds } from '../../piece/worth.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { MoneyField } from '../fields/MoneyField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { TextPlace } from '../fields/TextPlace.tsx';
import type { WorthContext } from './worthContext.ts';

const approachNames: Record<ApproachId, string> = {
  sales: 'Comparison of sales',
  cost: 'Cost of making or replacing it',
  income: 'Income it brings',
};

/** The approaches used and left out, what is assumed, and the worth the examiner concludes on. */
export function ValueConclusion({ piece, readOnly, set }: WorthContext) {
  const { worth } = piece;
  const lacks = lacksForWorth(piece);
  return (
    <section className="stack" aria-labelledby="value-conclusion">
      <h2 id="value-conclusion">Approaches and conclusion</h2>
      {approachIds.map((id) => {
        const approach = worth.approaches[id];
        const put = (to: { used?: boolean; why?: string }) => {
          const now = { why: '', ...approach, ...to };
          set(
            ['approaches', id],
            now.used === undefined ? { why: now.why } : { used: now.used, why: now.why },
          );
        };
        return (
          <TextPlace key={id} name={id}>
            <ChoiceField
              label={approachNames[id]}
              choices={[
                { id: 'used', name: 'Used' },
                { id: 'left', name: 'Left out' },
              ]}
              value={approach?.used === undefined ? undefined : approach.used ? 'used' : 'left'}
              save={(is) => put({ used: is === 'used' })}
              readOnly={readOnly}
            />
            <TextField
              label={`Why: ${approachNames[id].toLowerCase()}`}
              value={approach?.why ?? ''}
              save={(why) => put({ why })}
              readOnly={readOnly}
            />
          </TextPlace>
        );
      })}
      <TextField
        label="Assumptions and conditions"
        note="What is taken as true and not known, and what is known not to be so and supposed all the same; or: none."
        value={worth.assumptions}
        save={(words) => set(['assumptions'], words)}
        readOnly={readOnly}
        lines
      />
      <div className="pair">
        <MoneyField
          label="Worth, from"
          value={worth.lowCents}
          save={(cents) => set(['lowCents'], cents)}
          readOnly={readOnly}
        />
        <MoneyField
          label="Worth, to"
          note="The same, or empty, where one figure is meant."
          value={worth.highCents}
          save={(cents) => set(['highCents'], cents)}
          readOnly={readOnly}
        />
      </div>
      <TextField
        label="How that follows"
        note="Which sales weigh most and why, a set against single pieces, alterations, a block of like pieces."
        value={worth.conclusion}
        save={(words) => set(['conclusion'], words)}
        readOnly={readOnly}
        lines
      />
      {lacks.length === 0 ? null : (
        <div className="caution">
          <p>Before a worth is signed, still to be stated (“none” is an answer, blank is not):</p>
          <ul>
            {lacks.map((each) => (
              <li key={each.id}>
                {each.words}
                {each.page === 'engagement' ? ' (Engagement)' : ''}
              </li>
            ))}
          </ul>
          <p className="small">
            A reminder of what appraisal standards ask, from memory of USPAP Standards 7 and 8: check the
            edition you certify to.
          </p>
        </div>
      )}
    </section>
  );
}
