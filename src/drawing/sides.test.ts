import { describe, expect, it } from 'vitest';
import { drawForm, type ViewId } from './drawForm.ts';
import { frontLies, leftLies, sidesUnder, sidesUnderAll } from './sides.ts';
import { allForms, featureChoices } from './testing/allForms.ts';

const forms = await allForms();

/** The left or right that a part is named by; a row counted `from the top and left` names no side. */
function sideIn(words: string): 'left' | 'right' | undefined {
  const side = /(?:^|[- ])(left|right)(?=$|[- ])/.exec(words.replace(/from the top and left/, ''))?.[1];
  return side as 'left' | 'right' | undefined;
}

/** Least and most of x (or y) in a path of M, L, C and Z with absolute places. */
function reach(d: string, axis: 0 | 1): [number, number] {
  const all = [...d.matchAll(/-?\d+(?:\.\d+)?/g)].map(Number).filter((_, at) => at % 2 === axis);
  return [Math.min(...all), Math.max(...all)];
}

const middle = (reaches: [number, number][]) =>
  (Math.min(...reaches.map(([low]) => low)) + Math.max(...reaches.map(([, high]) => high))) / 2;

/** The middle of each part over all its shapes in one view. */
function middles(shapes: readonly { part: string; d: string }[], axis: 0 | 1): Map<string, number> {
  const parts = [...new Set(shapes.map(({ part }) => part))];
  return new Map(
    parts.map((part) => [
      part,
      middle(shapes.filter((one) => one.part === part).map(({ d }) => reach(d, axis))),
    ]),
  );
}

// What faces a person from where they stand; worked out by hand, by no function of the program: the sitter and the
// piece look the same way, the person who faces the piece looks against it.
describe.each(forms)('left and right of $id', (form) => {
  const byHand = form.family === 'seating' ? 'seated' : 'facing';
  const signOfLeft: Record<Exclude<ViewId, 'side'>, 1 | -1> = byHand === 'seated'
    ? { front: 1, inside: 1, underside: 1, back: -1 }
    : { front: -1, inside: -1, underside: -1, back: 1 };
  const choices = featureChoices(form);
  const spread = choices.filter((_, at) => at % Math.ceil(choices.length / 5) === 0);
  const drawn = spread.flatMap((choice) => drawForm(form, choice, {}).views);

  it('are those of the sitter in seating, of the person facing it elsewhere', () => {
    expect(form.sides).toBe(byHand);
  });

  it('are the same in the id of a part and in its name', () => {
    for (const { id, name } of form.parts)
      if (sideIn(id) !== undefined) expect(sideIn(name.toLowerCase()), name).toBe(sideIn(id));
  });

  it('lie in every view where they are said to lie', () => {
    const named = new Map(form.parts.map(({ id, name }) => [id, sideIn(id) ?? sideIn(name.toLowerCase())]));
    let tried = 0;
    for (const { view, shapes } of drawn) {
      if (view === 'side') continue;
      expect(leftLies(view, form.sides)).toBe(signOfLeft[view] === 1 ? 'right' : 'left');
      for (const [part, x] of middles(shapes, 0)) {
        const side = named.get(part);
        if (side === undefined) continue;
        const sign = side === 'left' ? signOfLeft[view] : -signOfLeft[view];
        expect(x * sign, `${part}, ${view}`).toBeGreaterThan(0);
        tried++;
      }
    }
    // A glass or a clock may have no part named by its side in front; all others have.
    if (byHand === 'seated' || ['case', 'table'].includes(form.family)) expect(tried).toBeGreaterThan(0);
  });

  it('have their front on the side of the side view, and on top of the underside, that is said', () => {
    const isFront = (part: string) => /(^|-)front(-|$)/.test(part);
    const isRear = (part: string) => /(^|-)(rear|back)(-|$)/.test(part) && !isFront(part);
    for (const { view, name, shapes } of drawn) {
      if (view !== 'side' && view !== 'underside') continue;
      const at = middles(shapes, view === 'side' ? 0 : 1);
      const fronts = [...at].filter(([part]) => isFront(part)).map(([, place]) => place);
      const rears = [...at].filter(([part]) => isRear(part)).map(([, place]) => place);
      if (view === 'side') {
        expect(name).toBe('Left side');
        expect(frontLies(form.sides)).toBe(byHand === 'seated' ? 'left' : 'right');
      }
      if (fronts.length === 0 || rears.length === 0) continue;
      const sign = view === 'underside' || byHand === 'seated' ? 1 : -1;
      expect(
        Math.min(...rears.map((y) => y * sign)) - Math.max(...fronts.map((y) => y * sign)),
        view,
      ).toBeGreaterThan(0);
    }
  });
});

it('says whose sides are meant, and where they lie', () => {
  expect(sidesUnder('front', 'seated')).toBe(
    'Left and right are those of the person seated: in this view the left is on the right.',
  );
  expect(sidesUnder('back', 'seated')).toMatch(/seated, as they lie in this view\.$/);
  expect(sidesUnder('front', 'facing')).toMatch(/facing the piece, as they lie in this view\.$/);
  expect(sidesUnder('back', 'facing')).toMatch(/in this view the left is on the right\.$/);
  expect(sidesUnder('side', 'facing')).toMatch(/facing the piece\. The front is to the right here\.$/);
  expect(sidesUnder('side', 'seated')).toMatch(/seated\. The front is to the left here\.$/);
  expect(sidesUnderAll(['front', 'side', 'underside'], 'seated')).toBe(
    'Left and right are those of the person seated; in the drawing from the front and from below the left is on the right.',
  );
  expect(sidesUnderAll(['front', 'side', 'back', 'underside'], 'facing')).toMatch(
    /; in the drawing from behind the left is on the right\.$/,
  );
  expect(sidesUnderAll([], 'facing')).toBe('');
  expect(sidesUnderAll(['front', 'side'], 'facing')).toMatch(/as they lie in the drawings\.$/);
});
