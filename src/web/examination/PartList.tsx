import { type Standing, standingWords } from '../../drawing/hatching.ts';
import { capital } from '../../ground/words.ts';
import type { Piece } from '../../piece/piece.ts';
import type { ExaminationContext } from './examinationContext.ts';

type Props = {
  context: ExaminationContext;
  standing: Record<string, Standing>;
  chosen: string | undefined;
  onChoose: (part: string) => void;
};

/** Every part as a button with its standing in words and its findings: the drawing, for the keyboard and the ear. */
export function PartList({ context, standing, chosen, onChoose }: Props) {
  const counts = countByPart(context.piece);
  const lines = [
    { id: wholeChoice, name: 'The whole piece', missing: false },
    ...context.parts.map((part) => ({
      id: part.id,
      name: capital(part.name),
      missing: context.piece.parts[part.id]?.missing === true,
    })),
  ];
  return (
    <ul className="exam-parts" aria-label="Parts">
      {lines.map(({ id, name, missing }) => {
        const state = standing[id];
        const count = counts[id] ?? 0;
        const words = missing ? 'missing' : state === undefined ? undefined : standingWords[state];
        return (
          <li key={id}>
            <button
              type="button"
              className="exam-part"
              aria-pressed={chosen === id}
              data-part-button={id}
              onClick={() => onChoose(id)}
            >
              <span className="exam-part-name">{name}</span>
              {words !== undefined && <span className="exam-part-standing">{words}</span>}
              {count > 0 && (
                <span className="exam-part-count">
                  {count} <span className="unseen">{count === 1 ? 'finding' : 'findings'}</span>
                </span>
              )}
            </button>
          </li>
        );
      })}
    </ul>
  );
}

/** The choice that stands for the whole piece in lists and addresses. */
export const wholeChoice = 'whole';

/** How many findings and observations each part has; those of the whole piece stand under `whole`. */
export function countByPart({
  findings,
  observations,
}: Pick<Piece, 'findings' | 'observations'>): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const { part } of [...Object.values(findings), ...Object.values(observations)]) {
    const id = part ?? wholeChoice;
    counts[id] = (counts[id] ?? 0) + 1;
  }
  return counts;
}
