import { useId } from 'react';
import type { PanelLossFound } from './panelWords.ts';

type Part = 'panel' | 'drawer-bottom' | 'round-top' | 'board';
type Props = { part: Part; found: PanelLossFound };

/** How many times too large the loss is drawn. */
const enlarged = 8;

/** The part as it was made and as it is, its loss enlarged: a panel in its frame, a drawer's bottom drawn from its groove, a round top, a board. */
export function PanelFigure({ part, found }: Props) {
  const hatch = useId();
  const { drawing, expected, direction } = found;
  const isSideways = direction === 'side to side';
  const across = drawing.acrossAtMakingMm;
  const scale = 200 / Math.max(drawing.alongMm, across);
  const loss = Math.min(enlarged * Math.max(0, expected.lossMm) * scale, 0.6 * across * scale);
  const [wide, high] = isSideways
    ? [across * scale, drawing.alongMm * scale]
    : [drawing.alongMm * scale, across * scale];
  const says = `${names[part]} as it was made (dashed) and as it is now, ${Math.round(expected.lossMm * 10) / 10} mm less ${direction}; the loss is drawn ${enlarged} times too large.`;
  return (
    <figure className="bench-panel">
      <svg
        className="bench-figure"
        viewBox={`-24 -24 ${wide + 48} ${high + 48}`}
        role="img"
        aria-label={says}
      >
        <defs>
          <pattern
            id={hatch}
            width="5"
            height="5"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <line className="bench-grain" y2="5" />
          </pattern>
        </defs>
        {part === 'round-top' ? (
          <>
            <ellipse
              fill={`url(#${hatch})`}
              className="bench-bare"
              cx={wide / 2}
              cy={high / 2}
              rx={wide / 2}
              ry={high / 2}
            />
            <ellipse
              className="bench-board"
              cx={wide / 2}
              cy={high / 2}
              rx={wide / 2 - (isSideways ? loss / 2 : 0)}
              ry={high / 2 - (isSideways ? 0 : loss / 2)}
            />
          </>
        ) : (
          <>
            {part !== 'board' && (
              <rect className="bench-frame" x={-14} y={-14} width={wide + 28} height={high + 28} />
            )}
            <rect fill={`url(#${hatch})`} className="bench-bare" width={wide} height={high} />
            <Board part={part} wide={wide} high={high} loss={loss} isSideways={isSideways} />
          </>
        )}
        <Grain wide={wide} high={high} loss={loss} isSideways={isSideways} isRound={part === 'round-top'} />
        {part === 'drawer-bottom' && (
          <text x={wide / 2} y={high + 11} fontSize="9" textAnchor="middle">
            drawer front
          </text>
        )}
      </svg>
      <figcaption className="small soft">{captions[part]} The loss is drawn eightfold.</figcaption>
    </figure>
  );
}

/** What is left: in the middle of a frame, or nailed at the back of a drawer and drawn out of the groove in its front. */
function Board({ part, wide, high, loss, isSideways }: BoardProps & { part: Part }) {
  const start = part === 'drawer-bottom' ? 0 : loss / 2;
  return (
    <rect
      className="bench-board"
      x={isSideways ? start : 0}
      y={isSideways ? 0 : start}
      width={isSideways ? wide - loss : wide}
      height={isSideways ? high : high - loss}
    />
  );
}

type BoardProps = { wide: number; high: number; loss: number; isSideways: boolean };

/** Lines along the grain. */
function Grain({ wide, high, loss, isSideways, isRound }: BoardProps & { isRound: boolean }) {
  return [0.25, 0.42, 0.6, 0.78].map((share) => {
    const span = isSideways ? wide : high;
    const at = loss / 2 + share * (span - loss);
    const off = (at - span / 2) / (span / 2);
    const inset = isRound ? (1 - Math.sqrt(Math.max(0, 1 - off * off))) / 2 + 0.06 : 0.04;
    const [from, to] = [inset * (isSideways ? high : wide), (1 - inset) * (isSideways ? high : wide)];
    return isSideways ? (
      <line key={share} className="bench-grain" x1={at} x2={at} y1={from} y2={to} />
    ) : (
      <line key={share} className="bench-grain" x1={from} x2={to} y1={at} y2={at} />
    );
  });
}

const names: Record<Part, string> = {
  panel: 'A panel in its frame',
  'drawer-bottom': 'A drawer’s bottom from above',
  'round-top': 'A round top',
  board: 'A board',
};

const captions: Record<Part, string> = {
  panel: 'Hatched: the bare strip that was in the groove when the finish was laid on.',
  'drawer-bottom': 'Hatched: the gap behind the front, where the bottom drew out of its groove.',
  'round-top': 'Hatched: what it has lost across the grain.',
  board: 'Hatched: what it has lost across the grain.',
};
