import { Link } from '@tanstack/react-router';
import { drawForm } from '../../drawing/drawForm.ts';
import { standings, standingWords } from '../../drawing/hatching.ts';
import { sidesUnder, sidesUnderAll } from '../../drawing/sides.ts';
import { capital, counted } from '../../ground/words.ts';
import { outOf } from '../../weighing/probabilityWords.ts';
import { HatchKey } from '../examination/HatchKey.tsx';
import { measuresMm } from '../examination/measures/viewMovedMost.ts';
import { PieceDrawing, type View } from '../examination/PieceDrawing.tsx';
import { placeToHash } from '../examination/placeInHash.ts';
import { standingByPart } from '../examination/standings.ts';
import type { ReadingsContext } from './readingsContext.ts';

type Part = ReadingsContext['weighing']['parts'][number];

const originNames: Record<string, string> = {
  'of-the-making': 'original',
  repair: 'later repair or renewal',
  improve: 'to improve',
  'other-old': 'from another old piece',
};

/** The piece from the front, beside the leading reading where there is room. */
export function FrontView({ context }: { context: ReadingsContext }) {
  const drawn = drawPiece(context);
  const view = drawn.views[0];
  if (view === undefined) return null;
  return (
    <figure>
      <PieceDrawing view={view} {...drawn.told} />
      <figcaption className="small soft">{sidesUnder(view.view, context.form.sides)}</figcaption>
      <HatchKey shown={drawn.shown} />
    </figure>
  );
}

/** How high the highest view may stand. */
const viewRem = 26;

/** Width of a view such that all are drawn to one scale, as wide and as high as there is room for. */
function oneScale(view: View, views: readonly View[]): { maxWidth: string } {
  const widest = Math.max(...views.map(({ box }) => box[2]));
  const highest = Math.max(...views.map(({ box }) => box[3]));
  const [, , width] = view.box;
  return { maxWidth: `min(${(100 * width) / widest}%, ${(viewRem * width) / highest}rem)` };
}

/** Which parts belong together: on the drawing by hatching, and in words. */
export function PartsStanding({ context }: { context: ReadingsContext }) {
  const { weighing, piece } = context;
  const { views, told, shown } = drawPiece(context);
  const unseen = (part: Part) => (part.standing === 'not-looked-at' ? 1 : 0);
  const own = (part: Part) => part.origin['of-the-making'] ?? 0;
  const sorted = weighing.parts.toSorted((a, b) => unseen(a) - unseen(b) || own(a) - own(b));
  return (
    <section className="stack-tight">
      <h2>Part by part</h2>
      <div className="read-views">
        {views.map((view) => (
          <figure key={view.view} style={oneScale(view, views)}>
            <PieceDrawing view={view} {...told} />
            <figcaption className="small soft">{view.name}</figcaption>
          </figure>
        ))}
      </div>
      <p className="small soft">
        {sidesUnderAll(
          views.map(({ view }) => view),
          context.form.sides,
        )}
      </p>
      <HatchKey shown={shown} />
      <ul className="read-parts">
        {sorted.map((part) => (
          <li key={part.id}>
            <Link
              to="/piece/$id/examination"
              params={{ id: piece.id }}
              hash={placeToHash({ part: part.id })}
              className="read-way"
            >
              {capital(part.name)}
            </Link>
            <span>{standingWords[part.standing]}</span>
            <span className="soft small">
              {part.standing === 'not-looked-at' ? '' : counted(part.looked, 'finding')}
            </span>
          </li>
        ))}
      </ul>
      <details>
        <summary>Numbers</summary>
        <div className="read-scroll">
          <table className="read-table">
            <caption>
              How probable it is that each part is original, and if not, what it is; for parts not looked at,
              by what is usual of such a part and by the rest of the piece alone
            </caption>
            <thead>
              <tr>
                <th scope="col">Part</th>
                {Object.values(originNames).map((name) => (
                  <th key={name} scope="col">
                    {capital(name)}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {sorted.map((part) => (
                <tr key={part.id}>
                  <th scope="row">{capital(part.name)}</th>
                  {Object.keys(originNames).map((origin) => (
                    <td key={origin}>
                      {part.origin[origin] === undefined ? '–' : outOf(part.origin[origin])}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </section>
  );
}

function drawPiece({ weighing, form, piece, parts }: ReadingsContext) {
  const told = {
    names: Object.fromEntries(parts.map((part) => [part.id, part.name])),
    standing: standingByPart(weighing),
    missing: Object.values(piece.parts).flatMap((part) => (part.missing ? [part.id] : [])),
  };
  const shown = standings.filter((each) => weighing.parts.some((part) => part.standing === each));
  return { views: drawForm(form, piece.features, measuresMm(form, piece)).views, told, shown };
}
