import type { Wanted } from '../../board/boardMark.ts';
import type { Marks } from '../../board/useMarks.ts';

type Props = { marks: Marks; wanted: readonly Wanted[]; label: string };

/** The marks that a tool needs, one button each: pressed while it is being set, and said to stand once it does. */
export function MarkButtons({ marks, wanted, label }: Props) {
  return (
    <fieldset className="row photo-wanted" aria-label={label}>
      {wanted.map((each) => (
        <button
          key={each.id}
          type="button"
          className="button quiet"
          aria-pressed={marks.placing?.id === each.id}
          onClick={() => marks.begin(marks.placing?.id === each.id ? undefined : each)}
        >
          {marks.of(each.id) === undefined ? `Mark ${each.name}` : `Mark ${each.name} anew`}
        </button>
      ))}
    </fieldset>
  );
}
