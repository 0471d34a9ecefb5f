import { useState } from 'react';
import { woodPanelLoss } from '../../../calculations/woodPanel.ts';
import { formatBoth } from '../../../units/length.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { LengthField } from '../../fields/LengthField.tsx';
import { PickField } from '../../fields/PickField.tsx';
import { type BenchContext, type Found, faultWords, findingsOf } from '../benchContext.ts';
import { ResultSheet } from '../ResultSheet.tsx';
import { runHere } from '../runHere.ts';
import { PanelFigure } from './PanelFigure.tsx';
import { panelWords } from './panelWords.ts';
import { WoodChoice, woodAtFirst, woodInput } from './WoodChoice.tsx';
import './panel.css';

const parts = [
  { id: 'panel', name: 'A panel in a frame', note: 'Look for a bare strip at its edges.' },
  { id: 'drawer-bottom', name: 'A drawer’s bottom', note: 'Look for a gap behind the front.' },
  { id: 'round-top', name: 'A round top', note: 'The diameter along the grain is its first size.' },
  { id: 'board', name: 'Another board', note: 'A side, a back, a shelf.' },
] as const;
type Part = (typeof parts)[number]['id'];

const grains = [
  { id: 'usual', name: 'As is usual for it' },
  { id: 'upright', name: 'Upright' },
  { id: 'side-to-side', name: 'From side to side' },
  { id: 'front-to-back', name: 'From front to back' },
] as const;

/** What a panel, a drawer's bottom or a round top should have lost across its grain, held against what is seen. */
export function PanelTool({ context }: { context: BenchContext }) {
  const { knowledge, piece } = context;
  const movement = knowledge.woodMovement;
  const [part, setPart] = useState<Part>('panel');
  const [wood, setWood] = useState(() =>
    woodAtFirst(
      knowledge,
      Object.values(piece.parts).flatMap((each) => each.woods),
    ),
  );
  const [width, setWidth] = useState<number>();
  const [length, setLength] = useState<number>();
  const [grain, setGrain] = useState<(typeof grains)[number]['id']>('usual');
  const [seen, setSeen] = useState<number>();
  const [nothingSeen, setNothingSeen] = useState(false);
  const [sigma, setSigma] = useState(knowledge.measurements?.scale.ruleMm.value);
  const [indoors, setIndoors] = useState(movement?.defaultIndoors ?? '');
  const seenMm = nothingSeen ? 0 : seen;
  const input =
    width === undefined || sigma === undefined
      ? undefined
      : {
          ...woodInput(wood),
          part,
          widthMm: width,
          ...(length === undefined || part === 'round-top' ? {} : { lengthMm: length }),
          ...(grain === 'usual' ? {} : { grain }),
          ...(seenMm === undefined ? {} : { seenMm }),
          sigmaMm: sigma,
          indoors,
        };
  const result = input === undefined ? undefined : runHere(woodPanelLoss, input, knowledge);
  const woodName = knowledge.woods[wood.wood]?.name ?? wood.wood;
  const found: Found | undefined =
    input === undefined || result === undefined || !result.ok
      ? undefined
      : {
          calculation: woodPanelLoss,
          input,
          output: result.output,
          says: panelWords(result.output, woodName, seenMm),
          findings: findingsOf(context, {
            from: 'wood.panel-loss',
            part,
            likelihoodRatio: result.output.likelihoodRatio,
          }),
        };
  return (
    <div className="stack">
      <ChoiceField label="What was measured" value={part} save={setPart} choices={parts} />
      <div className="bench-fields">
        <LengthField
          key={part === 'round-top' ? 'diameter' : 'width'}
          label={part === 'round-top' ? 'Diameter along the grain' : 'Width across the grain now'}
          note="17 3/8, 441 mm."
          onLength={setWidth}
        />
        {part !== 'round-top' && (
          <LengthField
            label="Length along the grain"
            note="For the drawing; may be left empty."
            onLength={setLength}
          />
        )}
        <div className="stack-tight">
          <LengthField label="The loss that is seen" note={seenNotes[part]} onLength={setSeen} />
          <label className="row">
            <input
              type="checkbox"
              checked={nothingSeen}
              onChange={(change) => setNothingSeen(change.target.checked)}
            />
            Looked for, and there is none
          </label>
        </div>
        <LengthField
          label="How far that reading may be out"
          note="A ruler in a dark place: 1/32 or more."
          begin="1/32"
          onLength={setSigma}
        />
      </div>
      <div className="bench-fields">
        <WoodChoice knowledge={knowledge} chosen={wood} onChoose={setWood} />
        <PickField
          label="Which way the grain runs"
          value={grain}
          options={grains}
          onPick={(picked) => setGrain(grains.find(({ id }) => id === picked)?.id ?? 'usual')}
        />
        {movement !== undefined && (
          <PickField
            label="Where the piece has stood of late"
            value={indoors}
            options={movement.indoors}
            onPick={setIndoors}
          />
        )}
      </div>
      {input === undefined && (
        <p className="said">
          Measure the part across its grain: what it should have lost since it was made is calculated and
          drawn. Add the loss that is seen, and old and recent make are weighed.
        </p>
      )}
      {result?.ok === false && (
        <p className="caution" role="alert">
          {faultWords(result.faults)}
        </p>
      )}
      {found !== undefined && result?.ok && width !== undefined && (
        <>
          <PanelFigure part={part} found={result.output} />
          <ResultSheet
            context={context}
            found={found}
            title={`${parts.find(({ id }) => id === part)?.name}, ${formatBoth(width)} across`}
          />
        </>
      )}
      <p className="small soft">
        A panel glued or painted fast splits instead; a bottom that was pushed forward or pieced shows less
        than it lost.
      </p>
    </div>
  );
}

const seenNotes: Record<Part, string> = {
  panel: 'Both bare strips together.',
  'drawer-bottom': 'The gap, or how far nail holes are drawn.',
  'round-top': 'How much shorter it is across the grain.',
  board: 'The gap at its edge, or what it falls short.',
};
