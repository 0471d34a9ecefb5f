import { Link } from '@tanstack/react-router';
import { partsOf } from '../../drawing/partsOf.ts';
import { settledInWords } from '../../learning/learnedKnowledge.ts';
import { hasEvidence } from '../../piece/hasEvidence.ts';
import type { Piece } from '../../piece/piece.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { usePiece } from '../record/usePiece.ts';
import { pieceTitle } from '../shell/pieceTitle.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { usePieceId } from '../shell/usePieceId.ts';
import { useWeighing } from '../weigh/useWeighing.ts';
import { Alterations, Shops } from './AlterationsAndShops.tsx';
import { Condition } from './Condition.tsx';
import { Contradictions } from './Contradictions.tsx';
import { firstWords } from './firstWords.ts';
import { Leading } from './Leading.tsx';
import { LooksAndChanges } from './LooksAndChanges.tsx';
import { Making } from './Making.tsx';
import { FrontView, PartsStanding } from './PartsStanding.tsx';
import { type ReadingsContext, wasLooked } from './readingsContext.ts';
import { Sensitivity, StartingOdds } from './StartingOdds.tsx';
import { WeighingProgress } from './WeighingProgress.tsx';
import { Weights } from './Weights.tsx';
import { YearCurves } from './YearCurves.tsx';
import '../examination/drawing.css';
import '../examination/panel.css';
import './readings.css';

/** What the findings say: the making first, the condition second, then the readings; words first, numbers one touch below. */
export function ReadingsPage() {
  const used = usePiece(usePieceId());
  return used.piece === undefined ? null : <Readings {...used} piece={used.piece} />;
}

type Ready = Pick<ReturnType<typeof usePiece>, 'readOnly' | 'record'> & { piece: Piece };

function Readings({ piece, readOnly, record }: Ready) {
  const knowledge = useKnowledge();
  const weigh = useWeighing(piece, 'intervals');
  usePageTitle('Readings', pieceTitle(piece));
  const form = knowledge.forms[piece.form];
  const { weighing } = weigh;
  if (weighing === undefined || form === undefined) {
    return (
      <div className="read stack">
        <h1>Readings</h1>
        {form === undefined && (
          <p>The form “{piece.form}” is not in the knowledge files, so nothing can be weighed.</p>
        )}
        {weigh.faults.map((fault) => (
          <p key={fault.code + fault.path} className="caution" role="alert">
            {fault.message}
          </p>
        ))}
        {weigh.faults.length === 0 && (
          <p role="status">
            The findings are being weighed. {weigh.first && hasEvidence(piece) && firstWords(weigh.first)}
          </p>
        )}
      </div>
    );
  }
  const learned = settledInWords(weighing.versions.knowledge);
  const context: ReadingsContext = {
    piece,
    readOnly,
    knowledge,
    form,
    parts: partsOf(form, piece.features),
    weighing,
  };
  const looked = wasLooked(weighing);
  return (
    <div className="read stack">
      <h1 className="unseen">Readings</h1>
      <WeighingProgress weigh={weigh} />
      <div className="read-top">
        <Making context={context} full={weigh.full} />
        <FrontView context={context} />
      </div>
      <Condition context={context} />
      <Leading context={context} full={weigh.full} />
      {looked && <Contradictions context={context} />}
      {looked && <Weights context={context} />}
      <YearCurves context={context} />
      <PartsStanding context={context} />
      <div className="read-two">
        <Alterations context={context} />
        <Shops context={context} />
      </div>
      <LooksAndChanges context={context} full={weigh.full} nextLooks={weigh.nextLooks} />
      <div className="read-two">
        <StartingOdds
          context={context}
          onChoose={(odds) => record('piece-described', [{ path: ['startingOdds'], to: odds }])}
        />
        <Sensitivity context={context} full={weigh.full} />
      </div>
      <footer className="read-foot">
        <p className="said">The program weighs; the examiner decides.</p>
        <p>
          <Link to="/piece/$id/opinion" params={{ id: piece.id }} className="button">
            To the opinion
          </Link>
        </p>
        {learned === undefined ? null : <p className="small">{learned}</p>}
        <p className="small soft">
          Knowledge {weighing.versions.knowledge} · {weighing.versions.draws} trials of the ranges, begun from{' '}
          {weighing.versions.seed}
        </p>
      </footer>
    </div>
  );
}
