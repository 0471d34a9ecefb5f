import { type KeyboardEvent, useRef, useState } from 'react';
import {
  facesLeft,
  nextStroke,
  type PaintedRows,
  painted,
  paintedFace,
  type Stroke,
  stretches,
  strokes,
} from './painting.ts';
import type { WearSurface } from './wearWords.ts';

type Props = {
  surface: WearSurface;
  name: string;
  rows: PaintedRows;
  brush: Stroke;
  onPaint: (rows: PaintedRows) => void;
};

/**
 * A surface laid out flat, a strip for each face, on which the wear that is there is painted: by a finger or mouse drawn along, or by the arrow
 * keys and space. Where use would touch it is shown under a strip only once every face was looked at, so that the eye is not led.
 */
export function PaintGrid({ surface, name, rows, brush, onPaint }: Props) {
  const latest = useRef(rows);
  latest.current = rows;
  const [at, setAt] = useState<[number, number]>([0, 0]);
  const grid = useRef<HTMLTableElement>(null);
  const paint = (face: number, place: number, stroke: Stroke | null) => {
    if (latest.current[face]?.[place] === stroke) return;
    latest.current = painted(latest.current, face, place, stroke);
    onPaint(latest.current);
  };
  const under = (x: number, y: number) => {
    const cell = document.elementFromPoint(x, y)?.closest<HTMLElement>('[data-face]');
    if (cell === null || cell === undefined || !grid.current?.contains(cell)) return;
    paint(Number(cell.dataset.face), Number(cell.dataset.at), brush);
  };
  const turn = (key: KeyboardEvent, [face, place]: [number, number]) => {
    const moves: Record<string, [number, number]> = {
      ArrowLeft: [face, place - 1],
      ArrowRight: [face, place + 1],
      ArrowUp: [face - 1, place],
      ArrowDown: [face + 1, place],
      Home: [face, 0],
      End: [face, stretches - 1],
    };
    const move = moves[key.key];
    if (key.key === ' ' || key.key === 'Enter') {
      key.preventDefault();
      paint(face, place, key.key === ' ' ? nextStroke(rows[face]?.[place] ?? null) : brush);
    } else if (move !== undefined) {
      key.preventDefault();
      const next: [number, number] = [
        Math.min(surface.faces.length - 1, Math.max(0, move[0])),
        Math.min(stretches - 1, Math.max(0, move[1])),
      ];
      setAt(next);
      grid.current?.querySelector<HTMLElement>(`[data-face="${next[0]}"][data-at="${next[1]}"]`)?.focus();
    }
  };
  const left = facesLeft(surface, rows);
  return (
    <div className="stack-tight">
      <p className="small soft">
        From {surface.along.from} (at the left) to {surface.along.to}. A place left bare on a face that you
        looked at counts as no wear. Keys: arrows to move, space to turn a place through the strokes, Enter to
        paint.
      </p>
      <table
        className="wear-grid"
        // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table whose cells are painted is a grid
        role="grid"
        aria-label={`${name}: wear face by face`}
        ref={grid}
        onPointerDown={(press) => under(press.clientX, press.clientY)}
        onPointerMove={(drag) => drag.buttons > 0 && under(drag.clientX, drag.clientY)}
      >
        <tbody>
          {surface.faces.map((face, index) => (
            <tr className="wear-row" key={face}>
              <th scope="row" className="wear-face">
                {face}
              </th>
              {Array.from({ length: stretches }, (_, place) => {
                const stroke = rows[index]?.[place] ?? null;
                const known = strokes.find(({ id }) => id === stroke);
                return (
                  <td
                    // biome-ignore lint/suspicious/noArrayIndexKey: places along the part
                    key={place}
                    className="wear-cell"
                    data-face={index}
                    data-at={place}
                    data-stroke={stroke ?? undefined}
                    tabIndex={at[0] === index && at[1] === place ? 0 : -1}
                    aria-label={`${face}, stretch ${place + 1} of ${stretches}: ${known?.name.toLowerCase() ?? 'nothing painted'}`}
                    onFocus={() => setAt([index, place])}
                    onKeyDown={(key) => turn(key, [index, place])}
                  >
                    {known?.sign}
                  </td>
                );
              })}
              {left.length === 0 && (
                <td className="wear-band">
                  <Expected grid={surface.grid[index] ?? []} face={face} />
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      <WholeFaces surface={surface} rows={rows} onPaint={onPaint} />
      <p role="status" className="small">
        {left.length === surface.faces.length
          ? ''
          : left.length > 0
            ? `Still to look at before it counts: ${left.join(', ')}.`
            : 'Every face was looked at. The thin bands show where use would touch.'}
      </p>
    </div>
  );
}

/** Where use would touch a face, as a thin band under what was painted. */
function Expected({ grid, face }: { grid: readonly number[]; face: string }) {
  return (
    <svg
      className="wear-expected"
      viewBox={`0 0 ${grid.length} 1`}
      preserveAspectRatio="none"
      role="img"
      aria-label={`${face}: ${expectedWords(grid)}`}
    >
      {grid.map((share, at) => (
        <rect
          // biome-ignore lint/suspicious/noArrayIndexKey: places along the part
          key={at}
          x={at}
          width={1.02}
          height={1}
          fill="var(--wood-dark)"
          fillOpacity={share ** 0.6}
        />
      ))}
    </svg>
  );
}

function expectedWords(grid: readonly number[]): string {
  const most = Math.max(...grid);
  if (most < 0.05) return 'use hardly touches it';
  const places = grid.flatMap((share, at) => (share >= 0.6 * most ? [Math.floor(at / 2) + 1] : []));
  const how = most >= 0.6 ? 'much' : 'somewhat';
  return `use touches it ${how}, most at stretches ${[...new Set(places)].join(', ')}`;
}

/** A whole face at one touch. */
function WholeFaces({ surface, rows, onPaint }: Pick<Props, 'surface' | 'rows' | 'onPaint'>) {
  return (
    <details>
      <summary>Set a whole face at once</summary>
      {surface.faces.map((face, index) => (
        <div className="row" key={face}>
          <span className="wear-face">{face}</span>
          {strokes.map(({ id, name }) => (
            <button
              key={id}
              type="button"
              className="button plain small"
              aria-label={`${face}: ${name.toLowerCase()} all over`}
              onClick={() => onPaint(paintedFace(rows, index, id))}
            >
              {name}
            </button>
          ))}
          <button
            type="button"
            className="button plain small"
            aria-label={`${face}: wipe off`}
            onClick={() => onPaint(paintedFace(rows, index, null))}
          >
            Wipe off
          </button>
        </div>
      ))}
    </details>
  );
}
