import type { ReactNode } from 'react';
import { reminderSentences } from '../../engagement/purposeReminders.ts';
import type { Engagement, Purpose } from '../../piece/engagement.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { purposeChoices } from './purposes.ts';
import type { TextOf } from './textOf.ts';

const cautions: Partial<Record<Purpose, string>> = {
  estate:
    'Estates are often taxed, and the law says who may value for that and how. Ask the family’s lawyer or the local office before you put a worth in writing.',
  gift: 'A gift can be taxed. Whether a return is due, and what has to go with it, is for the donor’s lawyer or the local office to say.',
  damage:
    'The policy or the contract of carriage decides what is paid and what has to be shown. See the piece before it is repaired, and keep every loose part.',
  wildlife:
    'An opinion on age and materials may be used as a legal paper. Name no species on sight alone, take no part in the sale, and leave permits to the wildlife authority. State no worth here: where one is asked for, it is another opinion.',
  donation:
    'Where a gift is set against tax, the law asks for a qualified appraiser, set forms and set days. Ask a tax adviser under the donor’s own law.',
  division:
    'How heirs may divide is a matter of the will and of local law. The opinion says what the piece is; it does not say who gets it.',
  court:
    'A court has its own rules for experts. Take the wording of the question from the court or from counsel, and keep every note.',
  insurance:
    'The policy says what worth is insured and who may attest it. Ask the insurer for the wording first.',
  sale: 'What a seller must tell a buyer, and what may be exported or holds a protected species, is local law: ask before it is offered.',
};

type PurposeFieldsProps = {
  engagement: Engagement;
  set: (field: 'purpose', to: string) => void;
  text: (field: TextOf, label: string, note?: string, lines?: boolean) => ReactNode;
  readOnly: boolean;
};

/** What the opinion is for, what is asked, and who may rely on the answer. */
export function PurposeFields({ engagement, set, text, readOnly }: PurposeFieldsProps) {
  const caution = engagement.purpose === undefined ? undefined : cautions[engagement.purpose];
  return (
    <section className="stack" aria-labelledby="what-for">
      <h2 id="what-for">Intended use</h2>
      <ChoiceField
        label="The opinion is wanted for"
        choices={purposeChoices}
        value={engagement.purpose}
        save={(purpose) => set('purpose', purpose)}
        readOnly={readOnly}
      />
      {caution === undefined ? null : (
        <div className="caution stack-tight">
          <p>{caution}</p>
          {reminderSentences(engagement.purpose).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      )}
      {text('question', 'The question', 'In the client’s own words.', true)}
      {text('mayRely', 'Intended users', 'The client only, an insurer, heirs, a court. No one else.')}
    </section>
  );
}
