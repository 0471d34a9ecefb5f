import type { ExaminationContext } from '../examinationContext.ts';
import { LookedOver } from './LookedOver.tsx';
import { capWords, OwnObservations } from './OwnObservations.tsx';

/** What is the examiner's own: observations that no sign covers, and that the whole was looked over. */
export function OwnTab({ context }: { context: ExaminationContext }) {
  const none = Object.keys(context.piece.observations).length === 0;
  return (
    <div className="own-observations stack">
      <section className="stack-tight" aria-labelledby="own-observations">
        <h2 id="own-observations">Something no sign covers</h2>
        <p className="measure">
          Say in your own words what you saw, and how often you would expect to see it on such a piece, were
          it original, repaired, altered, married, a copy or a fake. It is weighed, and marked as your own
          here and in print. {capWords}
        </p>
        {none && context.readOnly && <p className="soft">No observation of one’s own was recorded.</p>}
        <OwnObservations context={context} />
      </section>
      <LookedOver context={context} />
    </div>
  );
}
