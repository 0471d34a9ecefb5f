import { capital } from '../../ground/words.ts';
import { type BoardMark, isOpen, nextTouch } from './boardMark.ts';
import { type StepBy, stepWords } from './keyStep.ts';
import type { Marks } from './useMarks.ts';

type Props = {
  placing: Marks['placing'];
  chosen: BoardMark | undefined;
  scale: number | undefined;
  step: StepBy;
  readOnly: boolean;
};

/** From where on a touch is coarser than the picture by so much that it is said. */
const coarse = 0.6;

/** What to do next at the board, by touch and by keys. */
export function BoardWords({ placing, chosen, scale = 1, step, readOnly }: Props) {
  if (placing !== undefined)
    return (
      <>
        <strong>{capital(placing.name)}:</strong> {nextTouch(placing, placing.points.length)}. By keys: arrows
        move the cross {stepWords[step]}; Enter sets{isOpen(placing.kind) ? ', C closes' : ''}, Escape
        cancels.
        {step === 'pixels' &&
          scale < coarse &&
          ` A touch is out by ${(1 / scale).toFixed(1)} pixels of the picture from this far: go nearer, or mend it by keys.`}
      </>
    );
  if (chosen !== undefined && !readOnly)
    return (
      <>
        <strong>{capital(chosen.name)}:</strong> drag one of its points; by keys N takes the next point,
        arrows move it, or the whole mark before, {stepWords[step]}; Delete deletes the mark.
      </>
    );
  return <>Two fingers, the wheel with Ctrl, or + and − go nearer; 0 shows the whole.</>;
}
