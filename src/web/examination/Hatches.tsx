import type { Standing } from './standings.ts';

/** The id of a hatching within one drawing. */
export function hatchId(drawing: string, standing: Standing): string {
  return `${drawing}-${standing}`;
}

/**
 * The hatchings of a drawing, as patterns.
 *
 * @param gap  distance between lines, in the drawing's own units
 */
export function Hatches({ drawing, gap }: { drawing: string; gap: number }) {
  const thin = gap / 8;
  const frame = { patternUnits: 'userSpaceOnUse' as const, width: gap, height: gap };
  const line = { stroke: 'currentColor', strokeWidth: thin };
  return (
    <defs>
      <pattern id={hatchId(drawing, 'repair')} {...frame} patternTransform="rotate(45)">
        <line x1={gap / 2} y1={0} x2={gap / 2} y2={gap} {...line} />
      </pattern>
      <pattern id={hatchId(drawing, 'improve')} {...frame} patternTransform="rotate(45)">
        <path d={`M${gap / 2} 0V${gap}M0 ${gap / 2}H${gap}`} {...line} fill="none" />
      </pattern>
      <pattern id={hatchId(drawing, 'other-old')} {...frame}>
        <circle cx={gap / 2} cy={gap / 2} r={gap / 6} fill="currentColor" />
      </pattern>
      <pattern id={hatchId(drawing, 'unsure')} {...frame} width={gap * 2} height={gap * 1.6}>
        <line x1={gap * 0.3} y1={gap * 0.8} x2={gap * 1.1} y2={gap * 0.8} {...line} />
      </pattern>
    </defs>
  );
}
