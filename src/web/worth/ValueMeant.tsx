import { Link } from '@tanstack/react-router';
import { reminderSentences } from '../../engagement/purposeReminders.ts';
import { valueForPurpose } from '../../engagement/valueForPurpose.ts';
import { dayWords } from '../../units/days.ts';
import { purposeChoices } from '../engagement/purposes.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import type { WorthContext } from './worthContext.ts';

/** Which value is meant, in which market, for which day: what the intended use asks for comes first. */
export function ValueMeant({ used, piece, readOnly, set }: WorthContext) {
  const { engagement, worth } = piece;
  const proposal = engagement.purpose === undefined ? undefined : valueForPurpose[engagement.purpose];
  const isBlank = worth.definition === '' && worth.definitionFrom === '' && worth.market === '';
  const take = () =>
    proposal === undefined ||
    used.record('worth-changed', [
      { path: ['worth', 'definition'], to: proposal.definition },
      { path: ['worth', 'definitionFrom'], to: proposal.definitionFrom },
      { path: ['worth', 'market'], to: proposal.market },
    ]);
  return (
    <section className="stack" aria-labelledby="value-meant">
      <h2 id="value-meant">Which value is meant</h2>
      <p>
        {engagement.purpose === undefined
          ? 'The intended use decides which value is asked for, and is not chosen yet'
          : `Intended use: ${purposeChoices.find(({ id }) => id === engagement.purpose)?.name}`}
        {'; '}
        {engagement.effectiveOn === undefined
          ? 'no effective date is set'
          : `effective date ${dayWords(engagement.effectiveOn)}`}
        .{' '}
        <Link to="/piece/$id/engagement" params={{ id: piece.id }}>
          Engagement
        </Link>
      </p>
      {engagement.purpose !== undefined && proposal === undefined ? (
        <p className="caution">
          {engagement.purpose === 'wildlife'
            ? 'This use asks for age and materials and for no value: a worth belongs in another opinion.'
            : 'This use asks for no value. If you state one all the same, say which is meant.'}
        </p>
      ) : null}
      {proposal === undefined ? null : (
        <div className="caution stack-tight">
          <p>
            Usual for this use: {proposal.definition} {proposal.market} {proposal.day} A reminder, no law:
            check {proposal.check}.
          </p>
          {reminderSentences(engagement.purpose).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          {readOnly || !isBlank ? null : (
            <p>
              <button type="button" className="button quiet" onClick={take}>
                Take this wording over
              </button>
            </p>
          )}
        </div>
      )}
      <TextField
        label="The value, as it is defined"
        value={worth.definition}
        save={(words) => set(['definition'], words)}
        readOnly={readOnly}
        lines
      />
      <div className="pair">
        <TextField
          label="Where that definition stands"
          note="Regulation, policy, order, agreement."
          value={worth.definitionFrom}
          save={(words) => set(['definitionFrom'], words)}
          readOnly={readOnly}
        />
        <TextField
          label="The market, and why this one"
          value={worth.market}
          save={(words) => set(['market'], words)}
          readOnly={readOnly}
          lines
        />
      </div>
      <ChoiceField
        label="Prices are meant"
        choices={[
          { id: 'with-premium', name: 'With the buyer’s premium', note: 'What a buyer pays.' },
          { id: 'hammer', name: 'At the hammer', note: 'What the bidding stopped at.' },
        ]}
        value={worth.basis}
        save={(basis) => set(['basis'], basis)}
        readOnly={readOnly}
      />
    </section>
  );
}
