import { capital } from '../../ground/words.ts';
import type { NextLook } from '../../weighing/lookPlan.ts';
import { partName } from '../drawer/partName.ts';
import type { ExaminationContext } from './examinationContext.ts';
import { inPhotos, sayMinutes, sayNeed } from './planLooks.ts';

type ButtonProps = {
  context: ExaminationContext;
  look: NextLook;
  onGo: (look: NextLook) => void;
  gone?: number;
  /** What its answers would make of something. */
  makes?: string;
};

/** One look to go to: the sign, where it is, how long it takes and what it asks for. */
export function LookButton({ context, look, onGo, gone, makes }: ButtonProps) {
  return (
    <button type="button" className="exam-look" onClick={() => onGo(look)}>
      <span>
        {gone === undefined && makes === undefined && <span className="exam-look-lead">Look next </span>}
        <span className="said">{context.knowledge.signs[look.sign]?.name ?? look.sign}</span>
      </span>
      <span className="exam-look-cost">
        {capital(partName(context.parts, look.part))} · {sayMinutes(look.minutes)} ·{' '}
        {context.piece.mode === 'photo-only' ? inPhotos : sayNeed(look.needs)}
        {gone === undefined ? '' : ` · ${sayMinutes(gone)} in all`}
      </span>
      {makes === undefined ? null : <span className="exam-look-makes">{makes}</span>}
    </button>
  );
}
