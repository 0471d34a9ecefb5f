import { drawForm } from '../drawing/drawForm.ts';
import { drawingSvg } from '../drawing/drawingSvg.ts';
import { partsOf } from '../drawing/partsOf.ts';
import type { Weighing } from '../evidence/weighing.ts';
import type { Form } from '../knowledge/schema.ts';
import type { Piece } from '../piece/piece.ts';
import type { DrawnPicture } from './opinionDocument.ts';
import { capital, listed, type Standing, standings, standingWords } from './wording.ts';

/** Room for all views side by side, and the tallest a view may be. */
const room = { widthMm: 150, heightMm: 95 };

/** The views of the piece, each part hatched by how it stands, with the same said in words for who can't see it. */
export function drawStanding(
  form: Form,
  piece: Pick<Piece, 'features' | 'measures'>,
  weighing: Weighing | undefined,
): DrawnPicture[] {
  const measuresMm = Object.fromEntries(
    form.measures.map(({ id, typicalMm }) => [id, piece.measures[id]?.mm ?? typicalMm]),
  );
  const { views } = drawForm(form, piece.features, measuresMm);
  const names = Object.fromEntries(partsOf(form, piece.features).map((part) => [part.id, part.name]));
  const standing: Record<string, Standing> = Object.fromEntries(
    (weighing?.parts ?? []).map((part) => [part.id, part.standing]),
  );
  const scale = Math.min(
    room.widthMm / views.reduce((sum, { box }) => sum + box[2], 0),
    room.heightMm / Math.max(...views.map(({ box }) => box[3])),
  );
  return views.map((view) => {
    const alternative = viewWords(
      view.name,
      [...new Set(view.shapes.map((shape) => shape.part))],
      names,
      standing,
    );
    return {
      id: `view-${view.view}`,
      svg: drawingSvg(view, { standing, names, title: view.name, description: alternative, legend: false }),
      caption: capital(view.name),
      alternative,
      widthMm: view.box[2] * scale,
      heightMm: view.box[3] * scale,
    };
  });
}

function viewWords(
  view: string,
  parts: readonly string[],
  names: Record<string, string>,
  standing: Record<string, Standing>,
): string {
  const groups = standings
    .map((each) => ({ each, of: parts.filter((part) => standing[part] === each) }))
    .filter(({ of }) => of.length > 0)
    .map(({ each, of }) => `${standingWords[each]}: ${listed(of.map((part) => names[part] ?? part))}`);
  const drawing = `Line drawing of the piece, ${view.toLowerCase()}.`;
  return groups.length === 0 ? drawing : `${drawing} ${capital(groups.join('; '))}.`;
}
