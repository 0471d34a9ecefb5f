import { moved } from '../../../photo/outlines/twinsMotion.ts';
import type { Point } from '../../../photo/picture.ts';
import { linePath } from '../../plots/linePath.ts';
import type { Twins } from './twinsWords.ts';

type Props = { a: readonly Point[]; b: readonly Point[]; twins: Twins };

/** The second outline laid on the first, as it fits best. */
export function TwinsFigure({ a, b, twins }: Props) {
  const isMirrored = twins.mirrored.rmsMm < twins.plain.rmsMm;
  const { turnDeg, shiftMm, size } = isMirrored ? twins.mirrored : twins.plain;
  const motion = { turnRad: (turnDeg * Math.PI) / 180, shift: shiftMm, scale: size };
  const laid = b.map(([x, y]) => moved([isMirrored ? -x : x, y], motion));
  const all = [...a, ...laid];
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [wide, high] = [Math.max(...xs) - left || 1, Math.max(...ys) - top || 1];
  const room = 0.04 * Math.max(wide, high);
  return (
    <figure className="photo-twins">
      <svg
        className="photo-overlay"
        viewBox={`${left - room} ${top - room} ${wide + 2 * room} ${high + 2 * room}`}
        role="img"
        aria-label={`Both outlines laid on each other${isMirrored ? ', the second turned over' : ''}; they are ${twins.maxMm.toFixed(1)} apart at most.`}
      >
        <path className="photo-first" d={linePath(a)} />
        <path className="photo-second" d={linePath(laid)} />
      </svg>
      <figcaption className="small soft">
        The first outline whole, the second{isMirrored ? ', turned over,' : ''} broken.
      </figcaption>
    </figure>
  );
}
