import { useState } from 'react';
import { photoToolmarks } from '../../../calculations/photoToolmarks.ts';
import type { OutputOf } from '../../../calculations/runCalculation.ts';
import { told } from '../../../units/doubt.ts';
import { formatBoth } from '../../../units/length.ts';
import { regionOf } from '../../board/boardMark.ts';
import { PhotoBoard } from '../../board/PhotoBoard.tsx';
import { PickField } from '../../fields/PickField.tsx';
import { TextPlace } from '../../fields/TextPlace.tsx';
import { type BenchContext, type Found, findingsOf } from '../benchContext.ts';
import { ResultSheet } from '../ResultSheet.tsx';
import { directionOf } from './directionOf.ts';
import { MarkButtons } from './MarkButtons.tsx';
import { OnPhoto } from './OnPhoto.tsx';
import { mmPerPxAt } from './photoScale.ts';
import { ratioWords } from './ratioWords.ts';
import { ScaleFields } from './ScaleFields.tsx';
import { Under } from './Under.tsx';
import { useBenchMarks } from './useBenchMarks.ts';
import type { LaidPicture } from './useOpenPicture.ts';
import { usePictureCalculation } from './usePictureCalculation.ts';
import { useScale } from './useScale.ts';

type Toolmarks = OutputOf<typeof photoToolmarks>;

/** What tool left the marks on a surface, from a photo in raking light. */
export function ToolmarksTool({ context }: { context: BenchContext }) {
  return (
    <div className="stack">
      <p className="caution">
        A raking light shows marks best: hold a cool lamp low over the surface. Keep hot lamps away from
        finish and veneer and their leads out of the way; have a second person hold a piece that is turned
        over, and leave what is heavy or loose where it stands.
      </p>
      <OnPhoto
        context={context}
        says="Choose a photo of an unfinished face in raking light, with a rule or the card beside it. Draw a region of some 6 cm or more a side within one board, clear of its edges and of anything behind it, and a line along the board."
      >
        {(laid) => <OnBoard key={laid.key} context={context} laid={laid} />}
      </OnPhoto>
    </div>
  );
}

function OnBoard({ context, laid }: { context: BenchContext; laid: LaidPicture }) {
  const marks = useBenchMarks(`${context.piece.id}.toolmarks.${laid.key}`);
  const scaling = useScale(laid, marks, context, undefined, 'known');
  const [picked, pick] = useState('');
  const region = regionOf(marks.of('region'), laid.open);
  const directionDeg = directionOf(marks.of('run'));
  const middle = region && ([region.x + region.widthPx / 2, region.y + region.heightPx / 2] as const);
  const mmPerPx = scaling.scale && middle && mmPerPxAt(scaling.scale, middle, context.knowledge);
  const input =
    region === undefined || directionDeg === undefined || mmPerPx === undefined
      ? undefined
      : { region, directionDeg, mmPerPx: Number(mmPerPx.toPrecision(6)) };
  const calculated = usePictureCalculation(laid, photoToolmarks, input);
  const output = calculated.result?.ok ? calculated.result.output : undefined;
  const all = output && findingsOf(context, { from: 'photo.toolmarks', likelihoods: output.likelihoods });
  const one = all?.findings.find((each) => each.sign === picked) ?? all?.findings[0];
  const found: Found | undefined = output && {
    calculation: photoToolmarks,
    input: calculated.input,
    output,
    says: marksWords(output),
    findings: all && one && { ...all, findings: [one] },
    ...(laid.photo === undefined ? {} : { photo: laid.photo }),
    marks: marks.list,
  };
  return (
    <div className="photo-tool">
      <TextPlace name={laid.photo ?? laid.title}>
        <ScaleFields scaling={scaling} marks={marks} />
      </TextPlace>
      <MarkButtons
        marks={marks}
        label="What to mark"
        wanted={[
          { id: 'region', name: 'the region', kind: 'region' },
          { id: 'run', name: 'the length of the board', kind: 'line' },
        ]}
      />
      <PhotoBoard picture={laid.open} shows={laid.shows} marks={marks} />
      {input === undefined && (
        <p className="said">
          {scaling.scale === undefined
            ? 'First the scale: mark a known length, or find the card.'
            : 'Draw the region with the marks, and a line along the length of the board.'}
        </p>
      )}
      <Under {...calculated} />
      {all !== undefined && one !== undefined && (
        <>
          <PickField
            label="As which sign"
            note="For each: how much more probable the marks are with the sign there than without."
            value={one.sign}
            options={all.findings.map(({ sign, name, likelihoods: { present = 1, absent = 1 } }) => ({
              id: sign,
              name: `${name}: ${ratioWords(present / absent)}`,
            }))}
            onPick={pick}
          />
          {one.besides !== undefined && <p className="small">{one.besides}</p>}
        </>
      )}
      {found !== undefined && (
        <ResultSheet key={one?.sign} context={context} found={found} title={`Tool marks in ${laid.title}`} />
      )}
    </div>
  );
}

function marksWords({ says, pitchMm, pitchSigmaMm, arcRadiusMm, arcSigmaMm }: Toolmarks): string {
  return [
    says,
    pitchMm === undefined || pitchSigmaMm === undefined
      ? ''
      : `Marks stand ${pitchMm.toFixed(2)} mm apart, give or take ${told(pitchSigmaMm).toFixed(2)} mm (${(25.4 / pitchMm).toFixed(1)} to the inch).`,
    arcRadiusMm === undefined || arcSigmaMm === undefined
      ? ''
      : `Their radius is ${formatBoth(arcRadiusMm, { denominator: 4 })}, give or take ${told(arcSigmaMm).toFixed(0)} mm.`,
  ]
    .filter((each) => each !== '')
    .join(' ');
}
