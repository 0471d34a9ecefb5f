import { canStand, isOpen } from './boardMark.ts';
import type { Marks } from './useMarks.ts';

type Props = {
  marks: Marks;
  readOnly: boolean;
  shown: number | undefined;
  onZoom: (factor: number) => void;
  onWhole: () => void;
};

/** What can be done at the board by touch: nearer, further, whole, undo, close, cancel, delete. */
export function BoardButtons({ marks, readOnly, shown, onZoom, onWhole }: Props) {
  const { placing, chosen } = marks;
  return (
    <div className="row photo-buttons">
      <fieldset className="photo-near" aria-label="Zoom">
        <button type="button" className="button quiet" aria-label="Zoom out" onClick={() => onZoom(1 / 1.6)}>
          −
        </button>
        <button type="button" className="button quiet" aria-label="Zoom in" onClick={() => onZoom(1.6)}>
          +
        </button>
        <button type="button" className="button quiet" onClick={onWhole}>
          Whole
        </button>
        <span className="small soft photo-shown">{shown === undefined ? '' : `${nearness(shown)}`}</span>
      </fieldset>
      {!readOnly && (
        <>
          <button
            type="button"
            className="button quiet"
            disabled={marks.undo === undefined}
            onClick={marks.undo}
          >
            Undo the mark
          </button>
          {placing !== undefined && isOpen(placing.kind) && (
            <button
              type="button"
              className="button"
              disabled={!canStand(placing.kind, placing.points.length, placing.least)}
              onClick={marks.close}
            >
              Close “{placing.name}”
            </button>
          )}
          {placing !== undefined && (
            <button type="button" className="button quiet" onClick={() => marks.begin(undefined)}>
              Cancel
            </button>
          )}
          {placing === undefined && chosen !== undefined && (
            <button type="button" className="button quiet" onClick={() => marks.take(chosen)}>
              Delete mark
            </button>
          )}
        </>
      )}
    </div>
  );
}

function nearness(scale: number): string {
  return scale >= 1 ? `${Number(scale.toFixed(1))} : 1` : `1 : ${Number((1 / scale).toFixed(1))}`;
}
