import { useId } from 'react';
import { hatchWords, isHatched, isPale, type Standing, standingWords } from '../../drawing/hatching.ts';
import { Hatches, hatchId } from './Hatches.tsx';

/** What the hatchings mean, for those that are in the drawing. */
export function HatchKey({ shown }: { shown: readonly Standing[] }) {
  const id = useId();
  return (
    <ul className="exam-hatch-key" aria-label="What the hatching means">
      {shown.map((standing) => (
        <li key={standing}>
          <svg viewBox="0 0 34 20" width="34" height="20" aria-hidden="true">
            <Hatches drawing={`${id}-${standing}`} gap={8} />
            <rect
              className="exam-key-field"
              data-pale={isPale(standing) ? '' : undefined}
              x="0.5"
              y="0.5"
              width="33"
              height="19"
            />
            {isHatched(standing) && (
              <rect
                x="0.5"
                y="0.5"
                width="33"
                height="19"
                style={{ fill: `url(#${hatchId(`${id}-${standing}`, standing)})` }}
              />
            )}
          </svg>
          <span>
            {standingWords[standing]} <span className="unseen">({hatchWords[standing]})</span>
          </span>
        </li>
      ))}
    </ul>
  );
}
