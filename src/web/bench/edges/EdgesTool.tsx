import { useId, useState } from 'react';
import { edgesSeeThrough } from '../../../calculations/seeThrough.ts';
import { formatBoth } from '../../../units/length.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { LengthField } from '../../fields/LengthField.tsx';
import { type BenchContext, type Found, faultWords } from '../benchContext.ts';
import { ResultSheet } from '../ResultSheet.tsx';
import { runHere } from '../runHere.ts';
import { CurveFigure } from './CurveFigure.tsx';
import { edgeWords, seenWords } from './edgeWords.ts';
import { SectionFigure } from './SectionFigure.tsx';
import './edges.css';

/** How much of a splat's opening stays open from the side, with its edges square and with their backs chamfered. */
export function EdgesTool({ context }: { context: BenchContext }) {
  const id = useId();
  const [width, setWidth] = useState<number>();
  const [thickness, setThickness] = useState<number>();
  const [edge, setEdge] = useState<'square' | 'chamfered'>('chamfered');
  const [depth, setDepth] = useState<number>();
  const [cut, setCut] = useState<number>();
  const [angleDeg, setAngle] = useState(30);
  const isChamfered = edge === 'chamfered';
  const input =
    width === undefined ||
    thickness === undefined ||
    (isChamfered && (depth === undefined || cut === undefined))
      ? undefined
      : {
          openingWidthMm: width,
          thicknessMm: thickness,
          chamferDepthMm: isChamfered ? (depth as number) : 0,
          chamferWidthMm: isChamfered ? (cut as number) : 0,
          stepDeg: 1,
        };
  const result = input === undefined ? undefined : runHere(edgesSeeThrough, input, context.knowledge);
  const found: Found | undefined =
    input === undefined || result === undefined || !result.ok
      ? undefined
      : {
          calculation: edgesSeeThrough,
          input,
          output: result.output,
          says: edgeWords(result.output, isChamfered),
        };
  const seen = result?.ok ? seenWords(result.output.curve, angleDeg, isChamfered) : '';
  return (
    <div className="stack">
      <div className="bench-fields">
        <LengthField
          label="Width of the opening"
          note="At the face, where it is looked through: 7/8."
          onLength={setWidth}
        />
        <LengthField label="Thickness at the edge" note="Front to back: 1/2." onLength={setThickness} />
      </div>
      <ChoiceField
        label="Its edges"
        value={edge}
        save={setEdge}
        choices={[
          { id: 'chamfered', name: 'Backs chamfered', note: 'Sloped or pared away behind.' },
          { id: 'square', name: 'Square', note: 'As the saw left them.' },
        ]}
      />
      {isChamfered && (
        <div className="bench-fields">
          <LengthField
            label="How deep the slope is"
            note="From the back to where it begins: 5/16."
            onLength={setDepth}
          />
          <LengthField label="How far it cuts in at the back" note="Along the back: 1/4." onLength={setCut} />
        </div>
      )}
      {input === undefined && (
        <p className="said">
          Measure an opening of the splat and the wood beside it: the drawing then shows from where an edge
          hides the view, and from where a slope behind it shows.
        </p>
      )}
      {result?.ok === false && (
        <p className="caution" role="alert">
          {faultWords(result.faults)}
        </p>
      )}
      {input !== undefined && found !== undefined && result?.ok && width !== undefined && (
        <>
          <SectionFigure section={input} angleDeg={angleDeg} says={seen} />
          <div className="field">
            <label htmlFor={id}>Angle of the eye, off the square of the face</label>
            <input
              id={id}
              type="range"
              min={0}
              max={85}
              step={1}
              value={angleDeg}
              aria-valuetext={`${angleDeg} degrees`}
              onChange={(change) => setAngle(Number(change.target.value))}
            />
            <output htmlFor={id}>{seen}</output>
          </div>
          <CurveFigure found={result.output} angleDeg={angleDeg} isChamfered={isChamfered} />
          <ResultSheet context={context} found={found} title={`Opening of ${formatBoth(width)}`} />
        </>
      )}
      <p className="small soft">
        It says what the eye can tell from the side, not when it was made: chamfered backs are entered as
        their own sign in the examination.
      </p>
    </div>
  );
}
