import { moved } from '../../../photo/outlines/twinsMotion.ts';
import type { Point } from '../../../photo/picture.ts';
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
  const line = (points: readonly Point[]) =>
    points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(2)} ${y.toFixed(2)}`).join('');
  return (
    <figure className="photo-twins">
      <svg
        className="photo-overlay"
        viewBox={`${left - room} ${top - room} ${wide + 2 * room} ${high + 2 * room}`}
        role="img"
        aria-label={`Both outlines laid on each other${isMirrored ? ', the second turned over' : ''}; they are ${twins.maxMm.toFixed(1)} apart at most.`}
      >
        <path className="photo-first" d={line(a)} />
        <path className="photo-second" d={line(laid)} />
      </svg>
      <figcaption className="small soft">
        The first outline whole, the second{isMirrored ? ', turned over,' : ''} broken.
      </figcaption>
    </figure>
  );
}
