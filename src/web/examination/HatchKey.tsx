import { useId } from 'react';
import { type Standing, standingWords } from '../../drawing/hatching.ts';
import { Hatches, hatchId } from './Hatches.tsx';
import { hatchWords } from './standings.ts';

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
              x="0.5"
              y="0.5"
              width="33"
              height="19"
              style={{
                fill:
                  standing === 'of-the-making' ? 'none' : `url(#${hatchId(`${id}-${standing}`, standing)})`,
              }}
              stroke="currentColor"
            />
          </svg>
          <span>
            {standingWords[standing]} <span className="unseen">({hatchWords[standing]})</span>
          </span>
        </li>
      ))}
    </ul>
  );
}
