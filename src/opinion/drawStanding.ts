import { type DrawnDimension, dimensionsOf } from '../drawing/dimensions.ts';
import { drawForm } from '../drawing/drawForm.ts';
import { drawingSvg } from '../drawing/drawingSvg.ts';
import type { Standing } from '../drawing/hatching.ts';
import { partsOf } from '../drawing/partsOf.ts';
import { standingInWords } from '../drawing/standingInWords.ts';
import { capital } from '../ground/words.ts';
import { inSentence } from '../knowledge/inSentence.ts';
import type { Form } from '../knowledge/schema.ts';
import type { Piece } from '../piece/piece.ts';
import { formatBoth } from '../units/length.ts';
import type { Weighing } from '../weighing/weighing.ts';
import type { DrawnPicture } from './opinionDocument.ts';

/** Room for all views side by side, and the tallest a view may be. */
const room = { widthMm: 150, heightMm: 96 };

/**
 * The views of the piece at one scale, each part hatched by how it stands, with the sizes taken, and the same said in
 * words for who can't see it.
 */
export function drawStanding(
  form: Form,
  piece: Pick<Piece, 'features' | 'measures'>,
  weighing: Weighing | undefined,
): DrawnPicture[] {
  const taken = Object.fromEntries(Object.values(piece.measures).map(({ id, mm }) => [id, mm]));
  const { views } = drawForm(form, piece.features, taken);
  const names = Object.fromEntries(partsOf(form, piece.features).map((part) => [part.id, part.name]));
  const standing: Record<string, Standing> = Object.fromEntries(
    (weighing?.parts ?? []).map((part) => [part.id, part.standing]),
  );
  const drawn = views.map((view) => {
    const dimensions = dimensionsOf(view.view, view.box, form.measures, taken).filter(({ usual }) => !usual);
    const parts = [...new Set(view.shapes.map((shape) => shape.part))];
    const alternative = viewWords(view.name, parts, names, standing) + sizeWords(dimensions);
    const svg = drawingSvg(view, {
      standing,
      names,
      title: view.name,
      description: alternative,
      dimensions,
      legend: false,
    });
    return { id: `view-${view.view}`, svg, caption: capital(view.name), alternative };
  });
  return toOneScale(drawn);
}

/** Views side by side at one scale, as large as the page has room for. */
export function toOneScale(pictures: readonly Omit<DrawnPicture, 'widthMm' | 'heightMm'>[]): DrawnPicture[] {
  const drawn = pictures.map((picture) => ({ ...picture, ...sizeOf(picture.svg) }));
  const scale = Math.min(
    room.widthMm / drawn.reduce((sum, { wide }) => sum + wide, 0),
    room.heightMm / Math.max(...drawn.map(({ high }) => high)),
  );
  return drawn.map(({ wide, high, ...picture }) => ({
    ...picture,
    widthMm: wide * scale,
    heightMm: high * scale,
  }));
}

/** How large a picture says it is, in the drawing's own millimetres. */
function sizeOf(svg: string): { wide: number; high: number } {
  const found = /viewBox="[-\d.]+ [-\d.]+ ([\d.]+) ([\d.]+)"/.exec(svg);
  if (found === null) throw new RangeError('drawStanding needs a drawing with a viewBox');
  return { wide: Number(found[1]), high: Number(found[2]) };
}

function viewWords(
  view: string,
  parts: readonly string[],
  names: Record<string, string>,
  standing: Record<string, Standing>,
): string {
  const told = standingInWords(parts, names, standing);
  const drawing = `Line drawing of the piece, ${inSentence(view)}.`;
  return told === '' ? drawing : `${drawing} ${capital(told)}.`;
}

function sizeWords(dimensions: readonly DrawnDimension[]): string {
  return dimensions.length === 0
    ? ''
    : ` Marked: ${dimensions.map(({ name, mm }) => `${inSentence(name)} ${formatBoth(mm)}`).join(', ')}.`;
}
