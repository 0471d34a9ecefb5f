import { useState } from 'react';
import { woodRoundness } from '../../../calculations/woodRoundness.ts';
import { formatBoth } from '../../../units/length.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { LengthField } from '../../fields/LengthField.tsx';
import { PickField } from '../../fields/PickField.tsx';
import { type BenchContext, type Found, faultWords, findingsOf } from '../benchContext.ts';
import { ResultSheet } from '../ResultSheet.tsx';
import { runHere } from '../runHere.ts';
import { RoundFigure } from './RoundFigure.tsx';
import { roundnessWords } from './roundnessWords.ts';
import { WoodChoice, woodAtFirst, woodInput } from './WoodChoice.tsx';

/** Two diameters of a round part, held against what the wood does in two centuries. */
export function RoundnessTool({ context }: { context: BenchContext }) {
  const { knowledge } = context;
  const movement = knowledge.woodMovement;
  const [part, setPart] = useState<'top' | 'turning'>('top');
  const [wood, setWood] = useState(() =>
    woodAtFirst(
      knowledge,
      Object.values(context.piece.parts).flatMap((each) => each.woods),
    ),
  );
  const [along, setAlong] = useState<number>();
  const [across, setAcross] = useState<number>();
  const [sigma, setSigma] = useState(knowledge.measurements?.scale.ruleMm.value);
  const [indoors, setIndoors] = useState(movement?.defaultIndoors ?? '');
  const input =
    along === undefined || across === undefined || sigma === undefined
      ? undefined
      : { ...woodInput(wood), part, alongMm: along, acrossMm: across, sigmaMm: sigma, indoors };
  const result = input === undefined ? undefined : runHere(woodRoundness, input, knowledge);
  const found: Found | undefined =
    input === undefined || result === undefined || !result.ok
      ? undefined
      : {
          calculation: woodRoundness,
          input,
          output: result.output,
          says: roundnessWords(result.output, knowledge.woods[wood.wood]?.name ?? wood.wood),
          findings: findingsOf(context, {
            from: 'wood.roundness',
            part,
            likelihoodRatio: result.output.likelihoodRatio,
          }),
        };
  return (
    <div className="stack">
      <ChoiceField
        label="What was measured"
        value={part}
        save={setPart}
        choices={[
          { id: 'top', name: 'A round top, seat or disc', note: 'Along the grain and across it.' },
          {
            id: 'turning',
            name: 'A turned leg, post or pillar',
            note: 'The largest and the smallest diameter of one ring.',
          },
        ]}
      />
      <div className="bench-fields">
        <LengthField
          label={part === 'top' ? 'Diameter along the grain' : 'Largest diameter'}
          note="Callipers, at three places, and their mean: 32 1/16, 814 mm."
          onLength={setAlong}
        />
        <LengthField
          label={part === 'top' ? 'Diameter across the grain' : 'Smallest diameter'}
          onLength={setAcross}
        />
        <LengthField
          label="How far a reading may be out"
          note="Measure one diameter five times: how far do they scatter?"
          begin="1/32"
          onLength={setSigma}
        />
      </div>
      <div className="bench-fields">
        <WoodChoice knowledge={knowledge} chosen={wood} onChoose={setWood} withCut={part === 'top'} />
        {movement !== undefined && (
          <PickField
            label="Where the piece has stood of late"
            value={indoors}
            options={movement.indoors}
            onPick={setIndoors}
          />
        )}
      </div>
      {result?.ok === false && (
        <p className="caution" role="alert">
          {faultWords(result.faults)}
        </p>
      )}
      {found !== undefined && result?.ok && along !== undefined && across !== undefined && (
        <>
          <RoundFigure
            along={along}
            across={across}
            turning={part === 'turning'}
            expectedMm={result.output.expectedOld.meanMm}
          />
          <ResultSheet
            context={context}
            found={found}
            title={`${part === 'top' ? 'Round top' : 'Turning'}, ${formatBoth(along)} by ${formatBoth(across)}`}
          />
        </>
      )}
      <p className="small soft">
        A piece made of late from old or air-dried wood shrinks like an old one: the measure tells of the
        wood, and only through it of when the piece was made.
      </p>
    </div>
  );
}
