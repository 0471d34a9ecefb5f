import { type EdgeSection, sightOf, woodOf } from './edgeSection.ts';

type Props = { section: EdgeSection; angleDeg: number; says: string };

/** The edges of an opening in section, seen from above, with the band of sight that passes at an angle. */
export function SectionFigure({ section, angleDeg, says }: Props) {
  const { openingWidthMm: width, thicknessMm: thick } = section;
  const beside = Math.max(0.8 * width, 1.6 * thick);
  const beyond = Math.max(thick, 0.35 * width);
  const { left, right } = woodOf(section, beside);
  const sight = sightOf(section, angleDeg, beyond);
  const size = width + 2 * beside;
  const points = (outline: readonly (readonly [number, number])[]) =>
    outline.map(([x, y]) => `${x},${-y}`).join(' ');
  const square = sightOf({ ...section, chamferDepthMm: 0, chamferWidthMm: 0 }, angleDeg, beyond);
  return (
    <svg
      className="edges-section"
      viewBox={`${-beside} ${-thick - beyond} ${size} ${thick + 2 * beyond + size / 14}`}
      role="img"
      aria-label={`Section through the opening, the face below and the back above. ${says}`}
    >
      {sight !== undefined && <polygon className="edges-sight sloped" points={points(sight)} />}
      {square !== undefined && <polygon className="edges-sight" points={points(square)} />}
      <polygon className="edges-wood" points={points(left)} />
      <polygon className="edges-wood" points={points(right)} />
      <text x={width / 2} y={beyond + size / 18} fontSize={size / 26} textAnchor="middle">
        eye, in front · {angleDeg}°
      </text>
    </svg>
  );
}
