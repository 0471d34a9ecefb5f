import { generate } from 'lean-qr';
import { qrPath } from './qrPath.ts';

/** A text as a square code that a camera reads; always dark on light, since some cameras read no other. */
export function QrCode({ text, label }: { text: string; label: string }) {
  const { size, d } = qrPath(generate(text));
  return (
    <svg
      className="qr"
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={label}
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} className="qr-ground" />
      <path d={d} className="qr-dark" />
    </svg>
  );
}
