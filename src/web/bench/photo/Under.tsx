import type { CalculationResult } from '../../../calculations/define.ts';
import { faultWords } from '../benchContext.ts';

type Props = {
  busy?: boolean;
  result: CalculationResult<unknown> | undefined;
  cancel?: () => void;
};

/** That it is being worked out, with a way to stop, or what is wrong, in a sentence. */
export function Under({ busy = false, result, cancel }: Props) {
  if (busy)
    return (
      <div className="row" role="status">
        <span>Calculating</span>
        <progress aria-label="Calculating" />
        {cancel !== undefined && (
          <button type="button" className="button quiet" onClick={cancel}>
            Stop
          </button>
        )}
      </div>
    );
  if (result === undefined || result.ok) return null;
  return (
    <p className="caution" role="alert">
      {faultWords(result.faults)}
    </p>
  );
}
