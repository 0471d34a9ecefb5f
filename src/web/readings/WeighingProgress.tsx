import { redraws } from '../weigh/openWeighings.ts';
import type { WeighingNow } from '../weigh/useWeighing.ts';

/** How far the redraws are; they can be stopped and begun again. */
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
            Quick result. Testing the ranges draws every figure anew within its range, {redraws.draws} times,
            and shows how far the result moves.
          </p>
          <button type="button" className="button quiet" onClick={weigh.again}>
            Test the ranges
          </button>
        </>
      ) : (
        <>
          <label className="small" htmlFor="read-redraws">
            {progress < 0.98
              ? `Testing the ranges: every figure drawn anew ${redraws.draws} times`
              : 'Working out what to look at next'}
          </label>
          <progress id="read-redraws" value={progress} max={1} />
          <button type="button" className="button plain" onClick={weigh.cancel}>
            Stop
          </button>
        </>
      )}
    </div>
  );
}
