import { useState } from 'react';
import { capital } from '../../../ground/words.ts';
import type { BoardMark, Wanted } from '../../board/boardMark.ts';
import { PhotoBoard } from '../../board/PhotoBoard.tsx';
import type { Marks } from '../../board/useMarks.ts';
import { NumberField } from '../../fields/NumberField.tsx';
import { TextPlace } from '../../fields/TextPlace.tsx';
import { type BenchContext, faultWords } from '../benchContext.ts';
import { ResultSheet } from '../ResultSheet.tsx';
import { AsMeasure } from './AsMeasure.tsx';
import { type MeasureKind, measuredMark, measureKindOf } from './measured.ts';
import { OnPhoto } from './OnPhoto.tsx';
import { ScaleFields } from './ScaleFields.tsx';
import { useBenchMarks } from './useBenchMarks.ts';
import type { LaidPicture } from './useOpenPicture.ts';
import { useScale } from './useScale.ts';

/** Lengths, angles, circles and ellipses of the piece, from a photo with something of known size in it. */
export function MeasureTool({ context }: { context: BenchContext }) {
  return (
    <OnPhoto
      context={context}
      says="Choose a photo with the printed card in it, or anything of known size, in the same plane as what is to be measured. Then lengths, angles, circles and ellipses follow, each with its doubt."
    >
      {(laid) => <OnBoard key={laid.key} context={context} laid={laid} />}
    </OnPhoto>
  );
}

function OnBoard({ context, laid }: { context: BenchContext; laid: LaidPicture }) {
  const marks = useBenchMarks(`${context.piece.id}.measure.${laid.key}`);
  const usualPx = context.knowledge.measurements?.scale.markPx.value;
  const [typedPx, setSigmaPx] = useState(usualPx);
  const sigmaPx = typedPx ?? usualPx;
  const scaling = useScale(laid, marks, context, sigmaPx, 'card');
  const corners = scaling.way === 'card' && scaling.scale?.kind === 'plane' ? scaling.scale.asked.image : [];
  return (
    <div className="photo-tool">
      <TextPlace name={laid.photo ?? laid.title}>
        <ScaleFields scaling={scaling} marks={marks} />
      </TextPlace>
      <MeasureButtons marks={marks} />
      <PhotoBoard
        picture={laid.open}
        shows={laid.shows}
        marks={marks}
        over={(place) => (
          <g className="photo-over photo-corners">
            {corners.map((corner) => {
              const [x, y] = place(corner);
              return <circle key={corner.join()} className="photo-stroke" cx={x} cy={y} r="3" />;
            })}
          </g>
        )}
      />
      <div className="bench-fields">
        <NumberField
          label="How far a mark may be out"
          unit="pixels"
          note="One standard uncertainty each way: set one mark five times and see how they scatter."
          begin={usualPx}
          min={0.1}
          max={100}
          onNumber={setSigmaPx}
        />
      </div>
      <Measures context={context} laid={laid} marks={marks} scale={scaling.scale} sigmaPx={sigmaPx} />
    </div>
  );
}

const kinds: { kind: MeasureKind; name: string; mark: Pick<Wanted, 'kind' | 'least'> }[] = [
  { kind: 'length', name: 'A length', mark: { kind: 'line' } },
  { kind: 'angle', name: 'An angle', mark: { kind: 'angle' } },
  { kind: 'circle', name: 'A circle', mark: { kind: 'points', least: 3 } },
  { kind: 'ellipse', name: 'An ellipse', mark: { kind: 'points', least: 5 } },
];

function MeasureButtons({ marks }: { marks: Marks }) {
  const begin = (kind: MeasureKind, mark: Pick<Wanted, 'kind' | 'least'>) => {
    const taken = marks.list.flatMap(({ id }) => Number(/-(\d+)$/.exec(id)?.[1] ?? 0));
    const number = Math.max(0, ...taken) + 1;
    marks.begin({ id: `${kind}-${number}`, name: kind, ...mark });
  };
  return (
    <fieldset className="row photo-wanted" aria-label="What to measure">
      {kinds.map(({ kind, name, mark }) => (
        <button
          key={kind}
          type="button"
          className="button quiet"
          aria-pressed={marks.placing?.id.startsWith(`${kind}-`) === true}
          onClick={() => begin(kind, mark)}
        >
          {name}
        </button>
      ))}
    </fieldset>
  );
}

type MeasuresProps = {
  context: BenchContext;
  laid: LaidPicture;
  marks: Marks;
  scale: ReturnType<typeof useScale>['scale'];
  sigmaPx: number | undefined;
};

function Measures({ context, laid, marks, scale, sigmaPx }: MeasuresProps) {
  const measures = marks.list.filter((mark) => measureKindOf(mark) !== undefined);
  if (scale === undefined || sigmaPx === undefined)
    return <p className="said">First the scale: find the card, or mark something whose size is known.</p>;
  if (measures.length === 0)
    return <p className="said">Choose what to measure, and mark it in the plane of the scale.</p>;
  const at = (mark: BoardMark) => marks.list.indexOf(mark) + 1;
  return (
    <ul className="bare-list photo-list" aria-label="Measured">
      {measures.map((mark) => {
        const measured = measuredMark(mark, scale, sigmaPx, context.knowledge);
        const chosen = mark.id === marks.chosen || measures.length === 1;
        if (measured === undefined) return null;
        return (
          <li key={mark.id} data-chosen={chosen ? '' : undefined}>
            <button
              type="button"
              className="button plain"
              aria-pressed={chosen}
              onClick={() => marks.choose(mark.id)}
            >
              {at(mark)}. {capital(mark.name)}
            </button>{' '}
            {measured.ok ? (
              <span className="said photo-says">{measured.says}</span>
            ) : (
              <span className="doubt" role="alert">
                {faultWords(measured.faults)}
              </span>
            )}
            {chosen && measured.ok && (
              <>
                <ResultSheet
                  context={context}
                  found={{
                    ...measured.found,
                    ...(laid.photo === undefined ? {} : { photo: laid.photo }),
                    marks: marks.list,
                  }}
                  title={`${capital(mark.name)} in ${laid.title}`}
                />
                {measured.length !== undefined && !context.readOnly && (
                  <AsMeasure context={context} {...measured.length} from={laid.title} />
                )}
              </>
            )}
          </li>
        );
      })}
    </ul>
  );
}
