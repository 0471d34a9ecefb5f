import { useState } from 'react';
import { worthIndex } from '../../calculations/worthIndex.ts';
import { formatMoney } from '../../units/money.ts';
import { faultWords } from '../bench/benchContext.ts';
import { runHere } from '../bench/runHere.ts';
import { NumberField } from '../fields/NumberField.tsx';
import { useKnowledge } from '../knowledge/useKnowledge.ts';

/** An old price in later money, as context and no more. */
export function LaterMoney() {
  const knowledge = useKnowledge();
  const years = Object.keys(knowledge.consumerPrices?.means ?? {}).map(Number);
  const whole = years.filter((year) => knowledge.consumerPrices?.partYears[year] === undefined);
  const latest = Math.max(...whole);
  const [amount, setAmount] = useState<number>();
  const [fromYear, setFromYear] = useState<number>();
  const [toYear, setToYear] = useState<number | undefined>(latest);
  if (years.length === 0) return null;
  const result =
    amount === undefined || fromYear === undefined || toYear === undefined
      ? undefined
      : runHere(
          worthIndex,
          { amount, fromYear: Math.round(fromYear), toYear: Math.round(toYear) },
          knowledge,
        );
  return (
    <details>
      <summary>What an old price would be in later money</summary>
      <div className="stack-tight">
        <div className="pair">
          <NumberField label="Sum then" unit="dollars" begin={undefined} min={0} onNumber={setAmount} />
          <NumberField
            label="In the year"
            begin={undefined}
            min={Math.min(...years)}
            max={Math.max(...years)}
            onNumber={setFromYear}
          />
          <NumberField
            label="In money of"
            begin={latest}
            min={Math.min(...years)}
            max={Math.max(...years)}
            onNumber={setToYear}
          />
        </div>
        {result === undefined ? null : result.ok ? (
          <>
            <p className="said" role="status">
              About {formatMoney(Math.round(result.output.rounded * 100))} (index {result.output.indices.from}{' '}
              to {result.output.indices.to}).
            </p>
            <p className="small soft">
              {result.output.series}. {result.output.remarks.join(' ')}
            </p>
          </>
        ) : (
          <p className="caution">{faultWords(result.faults)}</p>
        )}
      </div>
    </details>
  );
}
