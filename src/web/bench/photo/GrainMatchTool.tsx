import { useState } from 'react';
import { photoGrainMatch } from '../../../calculations/photoGrainMatch.ts';
import { told } from '../../../units/doubt.ts';
import { regionOf } from '../../board/boardMark.ts';
import { PhotoBoard } from '../../board/PhotoBoard.tsx';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { type BenchContext, type Found, findingsOf } from '../benchContext.ts';
import { ResultSheet } from '../ResultSheet.tsx';
import { directionOf } from './directionOf.ts';
import { MarkButtons } from './MarkButtons.tsx';
import { OnPhoto } from './OnPhoto.tsx';
import { ProfilesFigure } from './ProfilesFigure.tsx';
import { Under } from './Under.tsx';
import { useBenchMarks } from './useBenchMarks.ts';
import type { LaidPicture } from './useOpenPicture.ts';
import { usePictureCalculation } from './usePictureCalculation.ts';

/** Whether the grain goes on across a band: a cuff, a joint, the edge of a patch. */
export function GrainMatchTool({ context }: { context: BenchContext }) {
  return (
    <OnPhoto
      context={context}
      says="Choose a photo taken squarely on the part, sharp, with wood to be seen on both sides of the cuff, joint or patch. Mark the wood on either side and the way the part runs: the grain of one side is followed to the other."
    >
      {(laid) => <OnBoard key={laid.key} context={context} laid={laid} />}
    </OnPhoto>
  );
}

function OnBoard({ context, laid }: { context: BenchContext; laid: LaidPicture }) {
  const marks = useBenchMarks(`${context.piece.id}.grain-match.${laid.key}`);
  const [across, setAcross] = useState<'cuff' | 'leg' | 'veneer' | 'other'>('cuff');
  const [surface, setSurface] = useState<'clear' | 'painted'>('clear');
  const [a, b] = [regionOf(marks.of('above'), laid.open), regionOf(marks.of('below'), laid.open)];
  const directionDeg = directionOf(marks.of('run'));
  const input =
    a === undefined || b === undefined || directionDeg === undefined
      ? undefined
      : { a, b, directionDeg, painted: surface === 'painted' };
  const calculated = usePictureCalculation(laid, photoGrainMatch, input);
  const output = calculated.result?.ok ? calculated.result.output : undefined;
  const findings =
    output &&
    findingsOf(context, {
      from: 'photo.grain-match',
      across,
      tells: output.tells,
      likelihoodRatio: output.likelihoodRatio,
    });
  const found: Found | undefined = output && {
    calculation: photoGrainMatch,
    input: calculated.input,
    output,
    says: output.says,
    findings,
    ...(laid.photo === undefined ? {} : { photo: laid.photo }),
    marks: marks.list,
  };
  return (
    <div className="photo-tool">
      <div className="bench-fields">
        <ChoiceField
          label="Across what"
          value={across}
          save={setAcross}
          choices={[
            { id: 'cuff', name: 'A cuff or cup on a leg' },
            { id: 'leg', name: 'A line or joint across a leg' },
            { id: 'veneer', name: 'A line within a leaf of veneer' },
            { id: 'other', name: 'Another joint or patch' },
          ]}
        />
        <ChoiceField
          label="The surface"
          value={surface}
          save={setSurface}
          choices={[
            { id: 'clear', name: 'Bare, or finished clear' },
            { id: 'painted', name: 'Painted or grained', note: 'Nothing can be told then.' },
          ]}
        />
      </div>
      <MarkButtons
        marks={marks}
        label="What to mark"
        wanted={[
          { id: 'above', name: 'wood on one side', kind: 'region' },
          { id: 'below', name: 'wood on the other side', kind: 'region' },
          { id: 'run', name: 'the way the part runs', kind: 'line' },
        ]}
      />
      <PhotoBoard picture={laid.open} shows={laid.shows} marks={marks} />
      {input === undefined && (
        <p className="said">
          Draw a region on either side, clear of the band and of the part’s edges, and a line along the part.
        </p>
      )}
      <Under {...calculated} />
      {output?.tells && <ProfilesFigure {...output.profiles} />}
      {output?.tells && (
        <p className="small">
          The second side lies {Math.abs(output.shiftPx).toFixed(1)} pixels aside of where the first one’s
          grain points, give or take {told(output.shiftSigmaPx).toFixed(1)}. {output.null.how}
        </p>
      )}
      {found !== undefined && (
        <ResultSheet
          key={across}
          context={context}
          found={found}
          title={`Grain across a ${across === 'cuff' ? 'cuff' : 'line'} in ${laid.title}`}
        />
      )}
      <p className="small soft">
        Look on two faces: boards of one tree, laid on end, fit like one piece. A mended break runs on and is
        one piece.
      </p>
    </div>
  );
}
