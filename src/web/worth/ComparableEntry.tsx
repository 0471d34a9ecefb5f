import type { Json } from '../../piece/event.ts';
import type { PriceAdjustment, PriceComparable } from '../../piece/worth.ts';
import { formatMoney } from '../../units/money.ts';
import { MoneyField } from '../fields/MoneyField.tsx';
import { PercentField } from '../fields/PercentField.tsx';
import { PickField } from '../fields/PickField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { TextPlace } from '../fields/TextPlace.tsx';
import type { WorthContext } from './worthContext.ts';
import '../fields/entryCard.css';

type Props = WorthContext & { comparable: PriceComparable; isOpen: boolean };

/** One sale: what it was, what was paid, and what has to be set right before it can be compared. */
export function ComparableEntry({ used, readOnly, comparable, isOpen }: Props) {
  const { id, adjustments } = comparable;
  const set = (field: keyof PriceComparable, to: Json | undefined) =>
    used.record('comparable-recorded', [
      { path: ['comparables', id, field], ...(to === undefined ? {} : { to }) },
    ]);
  const setAdjustments = (to: readonly PriceAdjustment[]) => set('adjustments', to as unknown as Json);
  return (
    <details className="entry-card" open={isOpen}>
      <summary>{saleLine(comparable)}</summary>
      <TextPlace name={id}>
        <div className="stack entry-card-fields">
          <div className="pair">
            <TextField
              label="What was sold"
              value={comparable.name}
              save={(words) => set('name', words)}
              readOnly={readOnly}
            />
            <TextField
              label="Sold on"
              note="2024, 2024-05 or 2024-05-31."
              value={comparable.date}
              save={(words) => set('date', words.trim())}
              readOnly={readOnly}
            />
            <TextField
              label="Where"
              note="House, sale and lot, or the dealer."
              value={comparable.where}
              save={(words) => set('where', words)}
              readOnly={readOnly}
            />
            <MoneyField
              label="Price"
              value={comparable.priceCents}
              save={(cents) => set('priceCents', cents)}
              readOnly={readOnly}
            />
            <PickField
              label="The buyer’s premium is"
              value={comparable.premiumIncluded ? 'in' : 'out'}
              options={[
                { id: 'in', name: 'in this price' },
                { id: 'out', name: 'not in this price' },
              ]}
              onPick={(is) => set('premiumIncluded', is === 'in')}
              readOnly={readOnly}
            />
            <PercentField
              label="Premium of that sale"
              note="Percent of the hammer price; asked for only where the price has to be brought over."
              value={comparable.premiumPercent}
              save={(percent) => set('premiumPercent', percent)}
              readOnly={readOnly}
            />
            <PercentField
              label="Weight"
              unit="against the others"
              note="1 where all count alike; 0 leaves it out."
              value={comparable.weight}
              save={(weight) => set('weight', weight ?? 1)}
              readOnly={readOnly}
            />
          </div>
          <h3>Adjustments</h3>
          {adjustments.map((each, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: an adjustment is known by its place
            <TextPlace key={index} name={`adjustment ${index}`}>
              <AdjustmentFields
                adjustment={each}
                readOnly={readOnly}
                change={(now) => setAdjustments(adjustments.map((one, at) => (at === index ? now : one)))}
                remove={() => setAdjustments(adjustments.filter((_, at) => at !== index))}
              />
            </TextPlace>
          ))}
          {readOnly ? null : (
            <div className="row">
              <button
                type="button"
                className="button quiet"
                onClick={() => setAdjustments([...adjustments, { why: '', of: 'piece' }])}
              >
                Add an adjustment
              </button>
              <button
                type="button"
                className="button plain"
                onClick={() => used.record('comparable-withdrawn', [{ path: ['comparables', id] }])}
              >
                Remove this sale
              </button>
            </div>
          )}
        </div>
      </TextPlace>
    </details>
  );
}

type AdjustmentProps = {
  adjustment: PriceAdjustment;
  readOnly: boolean;
  change: (now: PriceAdjustment) => void;
  remove: () => void;
};

function AdjustmentFields({ adjustment, readOnly, change, remove }: AdjustmentProps) {
  const { percent: _, ...rest } = adjustment;
  return (
    <div className="worth-adjustment">
      <TextField
        label="Reason"
        value={adjustment.why}
        save={(why) => change({ ...adjustment, why })}
        readOnly={readOnly}
      />
      <PercentField
        label="Up or down"
        value={adjustment.percent}
        save={(percent) => change(percent === undefined ? rest : { ...rest, percent })}
        readOnly={readOnly}
        signed
      />
      <PickField
        label="It is about"
        value={adjustment.of}
        options={[
          { id: 'piece', name: 'the piece' },
          { id: 'sale', name: 'the sale: time, terms' },
        ]}
        onPick={(of) => change({ ...adjustment, of: of === 'sale' ? 'sale' : 'piece' })}
        readOnly={readOnly}
      />
      {readOnly ? null : (
        <button type="button" className="button plain" onClick={remove}>
          Delete
        </button>
      )}
    </div>
  );
}

function saleLine({ name, date, priceCents }: PriceComparable): string {
  const price = priceCents === undefined ? 'no price yet' : formatMoney(priceCents);
  return [name.trim() || 'A sale not yet named', date, price].filter((each) => each !== '').join(', ');
}
