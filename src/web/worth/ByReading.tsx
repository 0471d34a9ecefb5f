import type { OutputOf } from '../../calculations/runCalculation.ts';
import { worthByReading } from '../../calculations/worthByReading.ts';
import { readingWords } from '../../piece/readings.ts';
import { formatDollars } from '../../units/money.ts';
import { outOf, probableWords, toldShares } from '../../weighing/probabilityWords.ts';
import { type AskedReading, askedValues, valuesOf } from '../../worth/valuesOf.ts';
import { faultWords } from '../bench/benchContext.ts';
import { runHere } from '../bench/runHere.ts';
import { MoneyField } from '../fields/MoneyField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { TextPlace } from '../fields/TextPlace.tsx';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { useWeighing } from '../weigh/useWeighing.ts';
import { ReadingBars } from './ReadingBars.tsx';
import type { WorthContext } from './worthContext.ts';

/** What the piece would be worth under each reading, and what that leaves hanging on the doubt. */
export function ByReading({ piece, readOnly, set }: WorthContext) {
  const knowledge = useKnowledge();
  const { weighing } = useWeighing(piece, 'looks');
  const readings = weighing === undefined ? [] : valuesOf(weighing.readings, piece.worth);
  const asked = askedValues(readings);
  const result = asked === undefined ? undefined : runHere(worthByReading, asked, knowledge);
  const unset = readings.filter(({ range }) => range === undefined);
  return (
    <section className="stack" aria-labelledby="by-reading">
      <h2 id="by-reading">What each reading would be worth</h2>
      {weighing === undefined ? (
        <p>
          Nothing is weighed yet: record findings first, and the readings stand here with how probable each
          is.
        </p>
      ) : (
        <>
          <p className="small soft">
            Set a range for each reading worth reckoning with, as if it were certain. The probabilities are
            those of the findings.
          </p>
          {readings.map((each) => (
            <ReadingRange key={each.id} reading={each} piece={piece} readOnly={readOnly} set={set} />
          ))}
        </>
      )}
      {result?.ok === false && (
        <p className="caution" role="alert">
          {faultWords(result.faults)}
        </p>
      )}
      {result?.ok ? (
        <div className="sheet stack-tight">
          <ReadingBars readings={result.output.readings} />
          <DoubtWords found={result.output} />
        </div>
      ) : unset.length > 0 && unset.length < readings.length ? (
        <p className="doubt small" role="status">
          No range yet for {unset.map(({ id }) => readingWords[id].inSentence).join('; ')}: none is guessed,
          so nothing is reckoned.
        </p>
      ) : null}
    </section>
  );
}

type RangeProps = Pick<WorthContext, 'piece' | 'readOnly' | 'set'> & { reading: AskedReading };

function ReadingRange({ reading, piece, readOnly, set }: RangeProps) {
  const { id, probability } = reading;
  const value = piece.worth.byReading[id];
  const change = (field: 'lowCents' | 'highCents' | 'words', to: number | string | undefined) =>
    set(['byReading', id, field], to);
  return (
    <fieldset className="worth-reading">
      <legend>
        {readingWords[id].title}: {probableWords(probability)}
      </legend>
      <TextPlace name={id}>
        <MoneyField
          label="From"
          value={value?.lowCents}
          save={(cents) => change('lowCents', cents)}
          readOnly={readOnly}
        />
        <MoneyField
          label="To"
          value={value?.highCents}
          save={(cents) => change('highCents', cents)}
          readOnly={readOnly}
        />
        <TextField
          label="Why"
          value={value?.words ?? ''}
          save={(words) => change('words', words)}
          readOnly={readOnly}
        />
      </TextPlace>
    </fieldset>
  );
}

function DoubtWords({ found }: { found: OutputOf<typeof worthByReading> }) {
  const { expected, low, high, atStake, settled } = found;
  const share = expected === 0 ? 0 : Math.round((100 * atStake) / expected);
  return (
    <>
      <p className="said" role="status">
        Over all readings {formatDollars(expected)} on average, {formatDollars(low)} to {formatDollars(high)}{' '}
        ({outOf(toldShares.most)}).
      </p>
      <p>
        {atStake < 0.5
          ? 'Nothing of it hangs on the doubt.'
          : `${formatDollars(atStake)} hangs on the doubt, ${share} in 100 of that average: so far, on average, the worth lies from it once the answer is known.`}
      </p>
      <p className="small soft">
        No examination can take away more of that than {formatDollars(settled.lessAtStake)}, and only one that
        settled the readings altogether would. The average is a sum for deciding, not a price anybody would
        pay once the answer is known: state the ranges beside it.
      </p>
    </>
  );
}
