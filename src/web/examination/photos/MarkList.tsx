import { capital } from '../../../ground/words.ts';
import type { Photo, PhotoMark } from '../../../piece/photo.ts';
import { partName } from '../../drawer/partName.ts';
import { TextField } from '../../fields/TextField.tsx';
import { TextPlace } from '../../fields/TextPlace.tsx';
import type { ExaminationContext } from '../examinationContext.ts';
import { placeWords } from './photoPlaces.ts';

type Props = {
  context: ExaminationContext;
  photo: Photo;
  chosen: string | undefined;
  onChoose: (id: string) => void;
  onChange: (mark: PhotoMark) => void;
  onWithdraw: (id: string) => void;
};

const kindWords: Record<PhotoMark['kind'], string> = { point: 'point', line: 'line', outline: 'outline' };

/** The marks of a photo by number: what each shows, and which finding it bears out. */
export function MarkList({ context, photo, chosen, onChoose, onChange, onWithdraw }: Props) {
  if (photo.marks.length === 0) return <p className="soft">No marks yet.</p>;
  const findings = Object.values(context.piece.findings).filter((each) => each.state !== 'could-not-tell');
  return (
    <section aria-label="Marks">
      <h3>Marks</h3>
      <ol className="exam-marks">
        {photo.marks.map((mark) => (
          <li key={mark.id} className="exam-mark-item" data-chosen={mark.id === chosen ? '' : undefined}>
            <button
              type="button"
              className="exam-answer"
              aria-pressed={mark.id === chosen}
              onClick={() => onChoose(mark.id)}
            >
              <strong>{mark.number}</strong> {kindWords[mark.kind]}
              <span className="unseen">, {placeWords(mark.points[0] ?? [0, 0])}</span>
            </button>
            <TextPlace name={mark.id}>
              <TextField
                label={`Mark ${mark.number} shows`}
                value={mark.words}
                readOnly={context.readOnly}
                save={(words) => onChange({ ...mark, words })}
              />
            </TextPlace>
            <div className="field">
              <label htmlFor={`mark-finding-${mark.id}`}>Finding it bears out</label>
              <select
                id={`mark-finding-${mark.id}`}
                value={mark.finding ?? ''}
                disabled={context.readOnly}
                onChange={(event) => {
                  const { finding: _before, ...rest } = mark;
                  onChange(event.target.value === '' ? rest : { ...rest, finding: event.target.value });
                }}
              >
                <option value="">None</option>
                {findings.map((finding) => (
                  <option key={finding.id} value={finding.id}>
                    {context.knowledge.signs[finding.sign]?.name ?? finding.sign},{' '}
                    {capital(partName(context.parts, finding.part))}
                    {finding.state === 'absent' ? ' (not there)' : ''}
                    {finding.state === 'could-not-tell' ? ' (could not tell)' : ''}
                  </option>
                ))}
              </select>
            </div>
            {!context.readOnly && (
              <button type="button" className="button plain" onClick={() => onWithdraw(mark.id)}>
                Delete mark {mark.number}
              </button>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}
