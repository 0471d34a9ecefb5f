import { capital } from '../examination/examRoom.ts';
import { type BoardMark, nextTouch } from './boardMark.ts';
import type { Marks } from './useMarks.ts';

type Props = { placing: Marks['placing']; chosen: BoardMark | undefined; scale: number | undefined };

/** From where on a touch is coarser than the picture by so much that it is said. */
const coarse = 0.6;

/** What to do next at the board, by touch and by keys. */
export function BoardWords({ placing, chosen, scale = 1 }: Props) {
  if (placing !== undefined)
    return (
      <>
        <strong>{capital(placing.name)}:</strong> {nextTouch(placing, placing.points.length)}. By keys: arrows
        move the cross by a pixel, with Shift by ten, with Alt by a hundred; Enter sets, C closes, Escape
        leaves off.
        {scale < coarse &&
          ` A touch is out by ${(1 / scale).toFixed(1)} pixels of the picture from this far: go nearer, or mend it by keys.`}
      </>
    );
  if (chosen !== undefined)
    return (
      <>
        <strong>{capital(chosen.name)}:</strong> drag one of its points; by keys N takes the next point,
        arrows move it by a pixel (Shift: ten), Delete deletes the mark.
      </>
    );
  return <>Two fingers, the wheel with Ctrl, or + and − go nearer; 0 shows the whole.</>;
}
