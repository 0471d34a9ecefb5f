/** The measured outline against a true circle, its departure drawn twelvefold, with the grain. */
export function RoundFigure({
  along,
  across,
  turning,
  expectedMm,
}: {
  along: number;
  across: number;
  turning: boolean;
  /** What old work would have lost across the grain. */
  expectedMm: number;
}) {
  const radius = 100;
  const scale = radius / (along / 2);
  const drawn = (lossMm: number) => Math.max(20, radius - 12 * (lossMm / 2) * scale);
  const grain = [-75, -50, -25, 0, 25, 50, 75];
  return (
    <svg
      className="bench-figure"
      viewBox="-130 -130 260 250"
      role="img"
      aria-label={`The measured outline, narrower across ${turning ? 'one way' : 'the grain'} than a circle; departures are drawn twelve times too large.`}
    >
      {!turning &&
        grain.map((y) => {
          const half = radius * Math.sqrt(Math.max(0, 1 - (y / drawn(along - across)) ** 2)) - 4;
          return half > 0 ? (
            <line key={y} x1={-half} x2={half} y1={y} y2={y} stroke="var(--wood-dry)" strokeWidth="1" />
          ) : null;
        })}
      <circle r={radius} fill="none" stroke="var(--line)" strokeDasharray="3 4" />
      <ellipse
        rx={radius}
        ry={drawn(expectedMm)}
        fill="none"
        stroke="var(--wood-aged)"
        strokeDasharray="8 4"
      />
      <ellipse rx={radius} ry={drawn(along - across)} fill="none" stroke="var(--hand)" strokeWidth="2" />
      <text x="0" y="-117" textAnchor="middle" fontSize="9">
        dotted: true round · dashed: expected of old work
      </text>
      <text x="0" y="-106" textAnchor="middle" fontSize="9">
        full: measured, what is lost drawn twelve times too large
      </text>
    </svg>
  );
}
