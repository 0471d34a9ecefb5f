import { useState } from 'react';
import type { OutputOf } from '../../../calculations/runCalculation.ts';
import { woodMoisture } from '../../../calculations/wood.ts';
import { woodMovementCalculation } from '../../../calculations/woodMovement.ts';
import { told } from '../../../units/doubt.ts';
import { formatBoth, formatInches, formatMm } from '../../../units/length.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { LengthField } from '../../fields/LengthField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { type BenchContext, type Found, faultWords } from '../benchContext.ts';
import { ResultSheet } from '../ResultSheet.tsx';
import { runHere } from '../runHere.ts';
import { WoodChoice, woodAtFirst, woodInput } from './WoodChoice.tsx';

type Movement = OutputOf<typeof woodMovementCalculation>;

/** How far a board moves between two moistures; each moisture may be read off a room's air. */
export function MovementTool({ context }: { context: BenchContext }) {
  const { knowledge } = context;
  const [wood, setWood] = useState(() =>
    woodAtFirst(
      knowledge,
      Object.values(context.piece.parts).flatMap((each) => each.woods),
    ),
  );
  const [width, setWidth] = useState<number>();
  const [from, setFrom] = useState<number | undefined>(14);
  const [to, setTo] = useState<number | undefined>(8);
  const [method, setMethod] = useState<'coefficient' | 'shrinkage'>('shrinkage');
  const input =
    width === undefined || from === undefined || to === undefined
      ? undefined
      : {
          ...woodInput(wood),
          widthMm: width,
          fromMoisturePercent: from,
          toMoisturePercent: to,
          method,
        };
  const result = input === undefined ? undefined : runHere(woodMovementCalculation, input, knowledge);
  const found: Found | undefined =
    input === undefined || result === undefined || !result.ok
      ? undefined
      : {
          calculation: woodMovementCalculation,
          input,
          output: result.output,
          says: movementWords(result.output),
        };
  return (
    <div className="stack">
      <div className="bench-fields">
        <LengthField label="Width across the grain" note="28 1/2, 724 mm." onLength={setWidth} />
        <NumberField
          label="Moisture before"
          unit="% of dry weight"
          begin={14}
          min={0}
          max={100}
          onNumber={setFrom}
        />
        <NumberField
          label="Moisture after"
          unit="% of dry weight"
          begin={8}
          min={0}
          max={100}
          onNumber={setTo}
        />
      </div>
      <RoomAir context={context} />
      <div className="bench-fields">
        <WoodChoice knowledge={knowledge} chosen={wood} onChoose={setWood} />
        <ChoiceField
          label="Calculated by"
          value={method}
          save={setMethod}
          choices={[
            { id: 'shrinkage', name: 'Total shrinkage', note: 'From green to dry; for any moistures.' },
            { id: 'coefficient', name: 'Coefficient', note: 'Meant for 6 to 14 % moisture.' },
          ]}
        />
      </div>
      {result?.ok === false && (
        <p className="caution" role="alert">
          {faultWords(result.faults)}
        </p>
      )}
      {found !== undefined && result?.ok && width !== undefined && (
        <>
          <ResultSheet context={context} found={found} title={`Board of ${formatBoth(width)}`} />
          {result.output.notes.map((note) => (
            <p key={note} className="small soft">
              {note}
            </p>
          ))}
        </>
      )}
    </div>
  );
}

function movementWords({ changeMm, widthAfterMm, sigmaMm }: Movement): string {
  const moved = Math.abs(changeMm);
  if (moved < 0.05) return 'It keeps its width.';
  const way = changeMm < 0 ? 'shrinks' : 'swells';
  return `It ${way} by ${formatInches(moved, { denominator: 32 })} (${formatMm(moved, 1)}), give or take ${formatMm(told(sigmaMm), 1)}, and is then ${formatBoth(widthAfterMm, { denominator: 32 })} wide.`;
}

/** The moisture that wood comes to in a room's air. */
function RoomAir({ context }: { context: BenchContext }) {
  const [temperature, setTemperature] = useState<number | undefined>(68);
  const [humidity, setHumidity] = useState<number | undefined>(45);
  const [unit, setUnit] = useState<'F' | 'C'>('F');
  const celsius =
    temperature === undefined ? undefined : unit === 'C' ? temperature : ((temperature - 32) * 5) / 9;
  const result =
    celsius === undefined || humidity === undefined
      ? undefined
      : runHere(
          woodMoisture,
          { temperatureC: celsius, relativeHumidityPercent: humidity },
          context.knowledge,
        );
  return (
    <details>
      <summary>Read the moisture off the air of a room</summary>
      <div className="bench-fields">
        <NumberField label="Temperature" unit={`°${unit}`} begin={68} onNumber={setTemperature} />
        <ChoiceField
          label="In"
          value={unit}
          save={setUnit}
          choices={[
            { id: 'F', name: 'Fahrenheit' },
            { id: 'C', name: 'Celsius' },
          ]}
        />
        <NumberField label="Relative humidity" unit="%" begin={45} min={0} max={95} onNumber={setHumidity} />
      </div>
      <p role="status">
        {result === undefined
          ? ''
          : result.ok
            ? `Wood comes to ${result.output.moisturePercent.toFixed(1)} % there, a single wood to a per cent more or less, once the air has held for weeks (boards: months).`
            : faultWords(result.faults)}
      </p>
    </details>
  );
}
