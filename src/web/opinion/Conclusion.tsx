import { readingIds, readingWords } from '../../piece/readings.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { YearsField } from '../fields/YearsField.tsx';
import { departs, type OpinionContext } from './opinionContext.ts';

/** What the examiner concludes, in their own words, and why. */
export function Conclusion({ context }: { context: OpinionContext }) {
  const { piece, weighing, locked, set } = context;
  const { opinion } = piece;
  const departing = departs(context);
  return (
    <section className="stack" aria-labelledby="conclusion">
      <h2 id="conclusion">Your conclusion</h2>
      <ChoiceField
        label="The piece is"
        choices={readingIds.map((id) => ({ id, name: readingWords[id].title }))}
        value={opinion.reading}
        save={(reading) => set('reading', reading)}
        readOnly={locked}
      />
      {departing && weighing !== undefined && opinion.reading !== undefined ? (
        <div className="departure stack-tight">
          <p className="said">
            The findings lead to {readingWords[weighing.leading].inSentence}; you conclude on{' '}
            {readingWords[opinion.reading].inSentence}. What do you see that the figures do not?
          </p>
          <TextField
            label="Why you depart from it"
            note="Both are printed, side by side."
            value={opinion.departure}
            save={(words) => set('departure', words)}
            readOnly={locked}
            lines
          />
        </div>
      ) : null}
      <TextField
        label="Conclusion"
        note="As it will be read: what it is, of when and where, and what has happened to it."
        value={opinion.conclusion}
        save={(words) => set('conclusion', words)}
        readOnly={locked}
        lines
      />
      <TextField
        label="Reasons"
        note="The findings it rests on, and what speaks against it."
        value={opinion.reasons}
        save={(words) => set('reasons', words)}
        readOnly={locked}
        lines
      />
      <div className="pair">
        <YearsField
          label="Made in the years"
          note="1760–1790, 1760s, about 1775."
          value={opinion.years}
          save={(years) => set('years', years)}
          readOnly={locked}
        />
        <TextField
          label="Place"
          note="Town or region, as far as it can be said."
          value={opinion.place}
          save={(words) => set('place', words)}
          readOnly={locked}
        />
      </div>
      <TextField
        label="Limiting conditions of this opinion"
        note="What could not be seen or settled, and for what it must not be used."
        value={opinion.limits}
        save={(words) => set('limits', words)}
        readOnly={locked}
        lines
      />
    </section>
  );
}
