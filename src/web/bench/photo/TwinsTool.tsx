import { useRef, useState } from 'react';
import type { CalculationResult } from '../../../calculations/define.ts';
import { photoTwins } from '../../../calculations/photoTwins.ts';
import type { AskedOf } from '../../../calculations/runCalculation.ts';
import type { Point } from '../../../photo/picture.ts';
import { PhotoBoard } from '../../board/PhotoBoard.tsx';
import type { Marks } from '../../board/useMarks.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { TextPlace } from '../../fields/TextPlace.tsx';
import { type BenchContext, type Found, faultWords, findingsOf } from '../benchContext.ts';
import { ResultSheet } from '../ResultSheet.tsx';
import { runHere } from '../runHere.ts';
import { MarkButtons } from './MarkButtons.tsx';
import { OnPhoto } from './OnPhoto.tsx';
import { inMillimetres } from './photoScale.ts';
import { ScaleFields } from './ScaleFields.tsx';
import { TwinsFigure } from './TwinsFigure.tsx';
import { type Twins, twinsWords } from './twinsWords.ts';
import { useBenchMarks } from './useBenchMarks.ts';
import type { LaidPicture } from './useOpenPicture.ts';
import { useScale } from './useScale.ts';

/** An outline as it was traced: in millimetres where the scale is known, else in the picture’s pixels. */
type Traced = { from: string; points: readonly Point[]; inMm: boolean; photo?: string };

/** Whether two outlines are twins of a machine or brothers of a hand. */
export function TwinsTool({ context }: { context: BenchContext }) {
  const [first, setFirst] = useState<Traced>();
  return (
    <div className="stack">
      {first !== undefined && (
        <div className="row">
          <span>The first outline was traced on {first.from}.</span>
          <button type="button" className="button quiet" onClick={() => setFirst(undefined)}>
            Let it go
          </button>
        </div>
      )}
      <OnPhoto
        context={context}
        says="Choose a photo of both parts, taken squarely from their front or side and far enough off; trace the same stretch of both. Where each has a photo of its own, trace one, lay it by, and choose the other."
      >
        {(laid) => <OnBoard key={laid.key} context={context} laid={laid} first={first} layBy={setFirst} />}
      </OnPhoto>
    </div>
  );
}

type Props = {
  context: BenchContext;
  laid: LaidPicture;
  first: Traced | undefined;
  layBy: (traced: Traced) => void;
};

function OnBoard({ context, laid, first, layBy }: Props) {
  const marks = useBenchMarks(`${context.piece.id}.twins.${laid.key}`);
  const scaling = useScale(laid, marks, context, undefined, 'known');
  const [help, setHelp] = useState<'edge' | 'straight'>('edge');
  const traced = context.knowledge.measurements?.scale.tracedMm.value;
  const [sigmaMm, setSigmaMm] = useState(traced);
  const [said, setSaid] = useState('');
  const trace = useTracing(laid, marks, help, setSaid);
  const outlineOf = (id: string): Traced | undefined => {
    const points = marks.of(id);
    if (points === undefined) return undefined;
    const placed = scaling.scale && inMillimetres(scaling.scale, points, context.knowledge);
    return {
      from: laid.title,
      points: placed?.ok ? placed.output : points,
      inMm: placed?.ok === true,
      ...(laid.photo === undefined ? {} : { photo: laid.photo }),
    };
  };
  const one = first ?? outlineOf('first');
  const two = outlineOf('second');
  const freeSize = one !== undefined && two !== undefined && !(one.inMm && two.inMm);
  const input =
    one === undefined || two === undefined
      ? undefined
      : {
          a: one.points,
          b: two.points,
          closed: false,
          freeSize,
          ...(sigmaMm === undefined ? {} : { sigmaMm }),
        };
  const result = useTwins(input, context);
  const output = result?.ok ? result.output : undefined;
  const findings =
    output && !freeSize
      ? findingsOf(context, {
          from: 'photo.twins',
          rmsMm: output.rmsMm,
          noiseMm: output.noiseMm,
          sigmaMm: output.sigmaMm,
        })
      : undefined;
  const found: Found | undefined = output && {
    calculation: photoTwins,
    input,
    output,
    says: twinsWords(output, freeSize, findings),
    findings,
    ...(laid.photo === undefined ? {} : { photo: laid.photo }),
    marks: marks.list,
  };
  return (
    <div className="photo-tool">
      <TextPlace name={laid.photo ?? laid.title}>
        <ScaleFields scaling={scaling} marks={marks} />
      </TextPlace>
      <div className="bench-fields">
        <ChoiceField
          label="Between two touches"
          value={help}
          save={setHelp}
          choices={[
            { id: 'edge', name: 'Follow the edge', note: 'By the change of light in the picture.' },
            { id: 'straight', name: 'Go straight', note: 'Where the edge can’t be told from its ground.' },
          ]}
        />
        <NumberField
          label="How far a traced point may be out"
          unit="mm"
          begin={traced}
          min={0.01}
          max={50}
          onNumber={setSigmaMm}
        />
      </div>
      <MarkButtons
        marks={marks}
        label="What to trace"
        wanted={[
          ...(first === undefined
            ? [{ id: 'first', name: 'the first outline', kind: 'outline' as const, least: 3 }]
            : []),
          { id: 'second', name: 'the second outline', kind: 'outline', least: 3 },
        ]}
      />
      <PhotoBoard picture={laid.open} shows={laid.shows} marks={marks} onSet={trace} />
      <p className="small" role="status">
        {said}
      </p>
      {input === undefined && (
        <p className="said">
          {one === undefined
            ? 'Trace the first part from one end to the other, then close; then the same stretch of the second.'
            : 'Now trace the same stretch of the second part.'}
        </p>
      )}
      {first === undefined && one !== undefined && two === undefined && (
        <div className="row">
          <button type="button" className="button quiet" onClick={() => layBy(one)}>
            Lay the first outline by, for another photo
          </button>
        </div>
      )}
      {result?.ok === false && (
        <p className="caution" role="alert">
          {faultWords(result.faults)}
        </p>
      )}
      {output !== undefined && one !== undefined && two !== undefined && (
        <TwinsFigure a={one.points} b={two.points} twins={output} />
      )}
      {found !== undefined && (
        <ResultSheet context={context} found={found} title={`Two outlines, ${laid.title}`} />
      )}
    </div>
  );
}

/** Compares the outlines once for each pair of them, and not at every touch. */
function useTwins(input: AskedOf<typeof photoTwins> | undefined, context: BenchContext) {
  const key = input === undefined ? '' : JSON.stringify(input);
  const last = useRef<{ key: string; result: CalculationResult<Twins> }>(undefined);
  if (input === undefined) return undefined;
  if (last.current?.key !== key)
    last.current = { key, result: runHere(photoTwins, input, context.knowledge) };
  return last.current.result;
}

/** Sets what lies between the last touch of an outline and this one: the edge in the picture, or the straight line. */
function useTracing(
  { open }: LaidPicture,
  marks: Marks,
  help: 'edge' | 'straight',
  tell: (said: string) => void,
) {
  const latest = useRef(marks);
  latest.current = marks;
  const waiting = useRef<Promise<void>>(Promise.resolve());
  return (at: Point) => {
    if (marks.placing?.kind !== 'outline' || help === 'straight') return marks.set([at]);
    waiting.current = waiting.current.then(async () => {
      const now = latest.current;
      const from = now.placing?.points.at(-1);
      if (from === undefined) return now.set([at]);
      const edge = await open.edge(from, at);
      tell(
        edge === undefined
          ? 'These touches lie too far apart to follow the edge: a straight line was drawn.'
          : '',
      );
      latest.current.set(edge === undefined || edge.length < 2 ? [at] : thinned(edge).slice(1));
      await new Promise((settled) => setTimeout(settled));
    });
  };
}

/** Every third point of an edge, and its ends: no less is known of it, and less has to be kept. */
function thinned(edge: readonly Point[]): Point[] {
  return edge
    .filter((_, index) => index % 3 === 0 || index === edge.length - 1)
    .map(([x, y]): Point => [Math.round(x * 100) / 100, Math.round(y * 100) / 100]);
}
