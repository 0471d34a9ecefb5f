import { useMemo } from 'react';
import { caseFromPiece } from '../../../evidence/caseFromPiece.ts';
import { tellsOfChange } from '../../../evidence/lookedOver.ts';
import { prepareCase } from '../../../evidence/prepareCase.ts';
import { listed } from '../../../ground/words.ts';
import { lookedOverWords, shortWords } from '../../../piece/observationWords.ts';
import { partName } from '../../drawer/partName.ts';
import type { ExaminationContext } from '../examinationContext.ts';
import { stateLookedOver } from './observationActs.ts';

/** The statement that the whole was looked over and nothing later found; and, where something was, that it is not weighed. */
export function LookedOver({ context }: { context: ExaminationContext }) {
  const { piece, knowledge } = context;
  const against = useMemo(
    () => namesOfChange(piece, knowledge, context.parts),
    [piece, knowledge, context.parts],
  );
  const fromPhotos = piece.mode === 'photo-only';
  return (
    <section className="stack-tight" aria-labelledby="looked-over">
      <h2 id="looked-over">Looked the whole over</h2>
      <label className="choice">
        <input
          type="checkbox"
          checked={piece.lookedOver}
          disabled={context.readOnly || (fromPhotos && !piece.lookedOver)}
          onChange={(event) => context.record(stateLookedOver(event.target.checked))}
        />
        {lookedOverWords}
      </label>
      <p className="small" role="status">
        {stands(piece.lookedOver, fromPhotos, against)}
      </p>
    </section>
  );
}

function stands(stated: boolean, fromPhotos: boolean, against: readonly string[]): string {
  if (fromPhotos && !stated) return 'From photographs alone that can’t be said.';
  if (stated && against.length > 0)
    return `This is recorded but not weighed, since ${listed(against)} ${against.length === 1 ? 'tells' : 'tell'} of a mend, a change or a part from another piece.`;
  if (stated)
    return 'This is recorded, weighed as your own statement, and printed in the opinion. It speaks against repairs, changes and marriages, and says little against a copy.';
  return against.length > 0
    ? `It would not be weighed now, since ${listed(against)} ${against.length === 1 ? 'tells' : 'tell'} of a mend, a change or a part from another piece.`
    : 'Tick it once every part within reach was looked at for them. It is weighed only while no finding or observation tells of a mend, a change or a part from another piece.';
}

/** What was recorded that tells of a mend, a change or a part from another piece, by name. */
function namesOfChange(
  piece: ExaminationContext['piece'],
  knowledge: ExaminationContext['knowledge'],
  parts: ExaminationContext['parts'],
): string[] {
  const ready = prepareCase(caseFromPiece(piece), knowledge, new Date().getFullYear());
  if (!ready.ok) return [];
  const { looks, observations } = tellsOfChange(ready.prepared);
  return [
    ...looks.map(({ sign, part }) => `“${sign.name}” on ${partName(parts, part === 'whole' ? null : part)}`),
    ...observations.map(({ words }) => `your own observation “${shortWords(words, 40)}”`),
  ];
}
