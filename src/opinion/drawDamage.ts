import { drawForm } from '../drawing/drawForm.ts';
import { drawingSvg } from '../drawing/drawingSvg.ts';
import type { Box } from '../drawing/extentOf.ts';
import { drawnIn } from '../drawing/hatching.ts';
import { partsOf } from '../drawing/partsOf.ts';
import { capital } from '../ground/words.ts';
import { inSentence } from '../knowledge/inSentence.ts';
import type { Form } from '../knowledge/schema.ts';
import type { Piece } from '../piece/piece.ts';
import { toOneScale } from './drawStanding.ts';
import type { DrawnPicture } from './opinionDocument.ts';

/**
 * The views on which a damaged part is drawn, each such part with the numbers of its damage; the same in words for who can't see it.
 * Damage of the piece as a whole stands on no view.
 */
export function drawDamage(
  form: Form,
  piece: Pick<Piece, 'features' | 'measures' | 'damages'>,
): DrawnPicture[] {
  const numbers = numbersByPart(piece);
  const taken = Object.fromEntries(Object.values(piece.measures).map(({ id, mm }) => [id, mm]));
  const names = Object.fromEntries(partsOf(form, piece.features).map((part) => [part.id, part.name]));
  const views = drawForm(form, piece.features, taken).views.filter(({ shapes }) =>
    shapes.some(({ part }) => numbers.has(part)),
  );
  const drawn = views.map((view) => {
    const shown = [...new Set(view.shapes.map(({ part }) => part))].filter((part) => numbers.has(part));
    const told = shown.map((part) => `${names[part] ?? part} ${(numbers.get(part) ?? []).join(' and ')}`);
    const alternative = `Line drawing of the piece, ${inSentence(view.name)}. Numbered by damage: ${told.join(', ')}.`;
    const size = Math.max(view.box[2], view.box[3]);
    const discs = shown.map((part) => {
      // The last drawn lies in front: it is the one that is seen.
      const [x, y] = view.shapes.findLast((shape) => shape.part === part)?.label ?? [0, 0];
      return disc([x, y], (numbers.get(part) ?? []).join(' '), size / 26, view.box);
    });
    const svg = drawingSvg(view, {
      names,
      title: view.name,
      description: alternative,
      legend: false,
    }).replace(/<\/svg>$/, `${discs.join('')}</svg>`);
    return { id: `damage-${view.view}`, svg, caption: capital(view.name), alternative };
  });
  return toOneScale(drawn);
}

/** The numbers of the damage on each part, as the table counts them. */
function numbersByPart({ damages }: Pick<Piece, 'damages'>): Map<string, number[]> {
  const numbers = new Map<string, number[]>();
  for (const [index, { part }] of Object.values(damages).entries())
    if (part !== undefined) numbers.set(part, [...(numbers.get(part) ?? []), index + 1]);
  return numbers;
}

/** A numbered disc at a place, moved so far that all of it lies in the picture. */
function disc([atX, atY]: readonly [number, number], words: string, radius: number, box: Box): string {
  const wide = radius * Math.max(1, words.length * 0.42);
  const within = (at: number, half: number, from: number, long: number) =>
    Math.max(from + 1.1 * half, Math.min(at, from + long - 1.1 * half));
  const [x, y] = [within(atX, wide, box[0], box[2]), within(atY, radius, box[1], box[3])];
  return `<g><rect x="${round(x - wide)}" y="${round(y - radius)}" width="${round(2 * wide)}" height="${round(2 * radius)}" rx="${round(radius)}" fill="${drawnIn.paper}" stroke="${drawnIn.ink}" stroke-width="${round(radius / 7)}"/><text x="${round(x)}" y="${round(y + radius * 0.42)}" text-anchor="middle" font-family="Source Sans 3, sans-serif" font-weight="700" font-size="${round(radius * 1.25)}" fill="${drawnIn.ink}">${words}</text></g>`;
}

function round(mm: number): number {
  return Math.round(mm * 100) / 100;
}
