import { useEffect, useRef, useState } from 'react';
import type { Calculation, CalculationResult } from '../../../calculations/define.ts';
import type { Handed } from '../../../calculations/runCalculation.ts';
import type { LaidPicture } from './useOpenPicture.ts';

/** How a calculation on a picture stands: nothing asked, under way, or done with what was asked. */
export type PictureCalculation<Output> = {
  busy: boolean;
  result: CalculationResult<Output> | undefined;
  /** What the result was calculated from. */
  input: object | undefined;
  cancel: () => void;
};

/** A short rest of the hand before it begins, so that a point being moved by keys does not start it anew at every pixel. */
const restMs = 250;

/** Runs a calculation on the picture, in a worker, whenever its input changes; an answer to an older question is let fall. */
export function usePictureCalculation<Asked extends { file: string }, Output>(
  { open, file }: LaidPicture,
  { id }: Calculation<Asked, Output>,
  input: Omit<Handed<NoInfer<Asked>>, 'file'> | undefined,
): PictureCalculation<Output> {
  const key = input === undefined ? '' : JSON.stringify(input);
  const [done, setDone] = useState<{ key: string; result: CalculationResult<Output> }>();
  const [left, setLeft] = useState('');
  const latest = useRef(key);
  latest.current = key;
  useEffect(() => {
    if (key === '' || key === left) return;
    const rest = setTimeout(async () => {
      open.cancel();
      const asked = { file, ...JSON.parse(key) } as object;
      const result = (await open.calculate(id, file, asked)) as CalculationResult<Output> | undefined;
      if (result !== undefined && latest.current === key) setDone({ key, result });
    }, restMs);
    return () => clearTimeout(rest);
  }, [open, file, id, key, left]);
  const here = done?.key === key ? done.result : undefined;
  return {
    busy: key !== '' && here === undefined && left !== key,
    result: key === '' ? undefined : here,
    input: input === undefined ? undefined : { file, ...input },
    cancel: () => {
      open.cancel();
      setLeft(key);
    },
  };
}
