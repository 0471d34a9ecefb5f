import type { WeighingNow } from '../weigh/useWeighing.ts';
import { redraws } from '../weigh/useWeighing.ts';

/** How far the redraws are; they can be broken off and begun again. */
export function WeighingProgress({ weigh }: { weigh: WeighingNow }) {
  const { progress, full, behind, faults } = weigh;
  if (faults.length > 0) {
    return (
      <p className="caution" role="alert">
        {faults.map((fault) => fault.message).join(' ')} What stands below was weighed before.
      </p>
    );
  }
  if (full && !behind) return null;
  return (
    <div className="read-progress">
      {progress === undefined ? (
        <>
          <p className="small">
            Weighed in short. The intervals come from {redraws.draws} redraws of every figure.
          </p>
          <button type="button" className="button quiet" onClick={weigh.again}>
            Redraw the figures
          </button>
        </>
      ) : (
        <>
          <label className="small" htmlFor="read-redraws">
            {progress < 0.98
              ? `Redrawing every figure ${redraws.draws} times`
              : 'Working out what to look at next'}
          </label>
          <progress id="read-redraws" value={progress} max={1} />
          <button type="button" className="button plain" onClick={weigh.cancel}>
            Break off
          </button>
        </>
      )}
    </div>
  );
}
