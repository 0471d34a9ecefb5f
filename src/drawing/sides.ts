import { listed } from '../ground/words.ts';
import type { Form } from '../knowledge/schema.ts';
import type { ViewId } from './drawForm.ts';

type Sides = Form['sides'];

const whose: Readonly<Record<Sides, string>> = {
  seated: 'Left and right are those of the person seated',
  facing: 'Left and right are those of the person facing the piece',
};

const from: Readonly<Record<Exclude<ViewId, 'side'>, string>> = {
  front: 'from the front',
  back: 'from behind',
  inside: 'of the inside',
  underside: 'from below',
};

/**
 * On which side of the picture the piece's left lies. Seen from the front, inside, or from below with the front on top, the sitter's
 * left lies to the right and the left of the person who faces the piece to the left; from behind they change places.
 */
export function leftLies(view: Exclude<ViewId, 'side'>, sides: Sides): 'left' | 'right' {
  return (sides === 'seated') === (view === 'back') ? 'left' : 'right';
}

/** On which side of a picture of the left side the front lies: who sits in the piece looks to the left of whoever stands at their left. */
export function frontLies(sides: Sides): 'left' | 'right' {
  return sides === 'seated' ? 'left' : 'right';
}

/** Whose left and right are meant, and where they lie in one view: said under it. */
export function sidesUnder(view: ViewId, sides: Sides): string {
  if (view === 'side') return `${whose[sides]}. The front is to the ${frontLies(sides)} here.`;
  return leftLies(view, sides) === 'left'
    ? `${whose[sides]}, as they lie in this view.`
    : `${whose[sides]}: in this view the left is on the right.`;
}

/** The same for all views of a piece at once: said under them in print; nothing where there are none. */
export function sidesUnderAll(views: readonly ViewId[], sides: Sides): string {
  const turned = views.flatMap((view) =>
    view !== 'side' && leftLies(view, sides) === 'right' ? [from[view]] : [],
  );
  if (views.length === 0) return '';
  if (turned.length === 0) return `${whose[sides]}, as they lie in the drawings.`;
  const named = listed(turned);
  return `${whose[sides]}; in the drawing ${named} the left is on the right.`;
}
