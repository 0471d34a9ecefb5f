import { capital } from '../../ground/words.ts';
import { type BoardMark, placeWords } from './boardMark.ts';
import type { Marks } from './useMarks.ts';

type Props = { marks: Marks; readOnly: boolean; onChoose: (mark: BoardMark) => void };

/** The marks that stand, in words, so that each can be reached without seeing the picture. */
export function MarkRoll({ marks, readOnly, onChoose }: Props) {
  if (marks.list.length === 0) return null;
  return (
    <details className="photo-roll">
      <summary>{marks.list.length === 1 ? 'One mark' : `${marks.list.length} marks`}, in words</summary>
      <ol className="bare-list">
        {marks.list.map((mark, index) => (
          <li key={mark.id} className="row">
            <button
              type="button"
              className="button plain"
              aria-pressed={mark.id === marks.chosen}
              onClick={() => onChoose(mark)}
            >
              {index + 1}. {capital(mark.name)}
            </button>
            <span className="small soft">
              {mark.points.length > 6
                ? `${mark.points.length} points from ${placeWords(mark.points[0] ?? [0, 0])}`
                : mark.points.map(placeWords).join(' · ')}
            </span>
            {!readOnly && (
              <button
                type="button"
                className="button plain small"
                aria-label={`Take ${mark.name} off`}
                onClick={() => marks.take(mark.id)}
              >
                Take off
              </button>
            )}
          </li>
        ))}
      </ol>
    </details>
  );
}
