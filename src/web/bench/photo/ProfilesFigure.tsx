/** The grain of both sides where they would meet: lines that rise and fall together are one piece’s. */
export function ProfilesFigure({ a, b }: { a: readonly number[]; b: readonly number[] }) {
  const most = Math.max(0.001, ...a.map(Math.abs), ...b.map(Math.abs));
  const line = (values: readonly number[]) =>
    values
      .map((value, index) => {
        const x = (index * 400) / Math.max(1, values.length - 1);
        return `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${(60 - (54 * value) / most).toFixed(1)}`;
      })
      .join('');
  return (
    <svg
      className="photo-figure"
      viewBox="0 0 400 146"
      role="img"
      aria-label="Lightness across the part, of one side as a whole line and of the other as a broken one, both carried to the middle of the band."
    >
      <path className="photo-first" d={line(a)} />
      <path className="photo-second" d={line(b)} />
      <path className="photo-first" d="M4 134H34" />
      <text x="40" y="139" fontSize="13">
        one side
      </text>
      <path className="photo-second" d="M124 134H154" />
      <text x="160" y="139" fontSize="13">
        the other side
      </text>
    </svg>
  );
}
