import { photoGrain } from '../../../calculations/photoGrain.ts';
import type { OutputOf } from '../../../calculations/runCalculation.ts';
import type { Point } from '../../../photo/picture.ts';
import { regionOf } from '../../board/boardMark.ts';
import { PhotoBoard } from '../../board/PhotoBoard.tsx';
import type { BenchContext, Found } from '../benchContext.ts';
import { ResultSheet } from '../ResultSheet.tsx';
import { MarkButtons } from './MarkButtons.tsx';
import { OnPhoto } from './OnPhoto.tsx';
import { Under } from './Under.tsx';
import { useBenchMarks } from './useBenchMarks.ts';
import type { LaidPicture } from './useOpenPicture.ts';
import { usePictureCalculation } from './usePictureCalculation.ts';

type Grain = OutputOf<typeof photoGrain>;

/** Which way the grain runs in a region of a photo, drawn as strokes. */
export function GrainTool({ context }: { context: BenchContext }) {
  return (
    <OnPhoto
      context={context}
      says="Choose a photo that shows bare or clear-finished wood, sharp and evenly lit; then draw a region on it, and strokes show how its grain runs."
    >
      {(laid) => <OnBoard key={laid.key} context={context} laid={laid} />}
    </OnPhoto>
  );
}

function OnBoard({ context, laid }: { context: BenchContext; laid: LaidPicture }) {
  const marks = useBenchMarks(`${context.piece.id}.grain.${laid.key}`);
  const region = regionOf(marks.of('region'), laid.open);
  const calculated = usePictureCalculation(laid, photoGrain, region && { region });
  const output = calculated.result?.ok ? calculated.result.output : undefined;
  const found: Found | undefined = output && {
    calculation: photoGrain,
    input: calculated.input,
    output,
    says: output.tells
      ? `${output.says} Over the region it wanders by ${output.spreadDeg.toFixed(1)}°.`
      : output.says,
    ...(laid.photo === undefined ? {} : { photo: laid.photo }),
    marks: marks.list,
  };
  return (
    <div className="photo-tool">
      <MarkButtons
        marks={marks}
        label="What to mark"
        wanted={[{ id: 'region', name: 'the region', kind: 'region' }]}
      />
      <PhotoBoard
        picture={laid.open}
        shows={laid.shows}
        marks={marks}
        readOnly={false}
        over={(place, scale) => output && <Strokes map={output.map} place={place} scale={scale} />}
      />
      {region === undefined && <p className="said">Draw the region whose grain you ask after.</p>}
      <Under {...calculated} />
      {found !== undefined && (
        <ResultSheet context={context} found={found} title={`Grain in ${laid.title}`} />
      )}
      <p className="small soft">
        It sees lines, not wood: scratches, brush marks and saw marks have a direction too.
      </p>
    </div>
  );
}

type StrokesProps = { map: Grain['map']; place: (point: Point) => Point; scale: number };

/** The longer and bolder a stroke, the plainer the grain runs that way there. */
function Strokes({ map, place, scale }: StrokesProps) {
  return (
    <g className="photo-over">
      {map.cells.map(({ x, y, orientationDeg, coherence }) => {
        if (orientationDeg === null) return null;
        const [cx, cy] = place([x + map.cellPx / 2 - 0.5, y + map.cellPx / 2 - 0.5]);
        const half = map.cellPx * scale * 0.45 * (0.3 + 0.7 * coherence);
        const [dx, dy] = [
          half * Math.cos((orientationDeg * Math.PI) / 180),
          half * Math.sin((orientationDeg * Math.PI) / 180),
        ];
        const d = `M${cx - dx} ${cy - dy}L${cx + dx} ${cy + dy}`;
        return (
          <g key={`${x} ${y}`}>
            <path className="photo-halo" d={d} strokeWidth={2 + 2.5 * coherence + 1.5} />
            <path className="photo-stroke" d={d} strokeWidth={1 + 2.5 * coherence} />
          </g>
        );
      })}
    </g>
  );
}
