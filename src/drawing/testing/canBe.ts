type Sizes = Readonly<Record<string, number>>;

/**
 * Whether one piece of a form can have these sizes at once. A form not named here is drawn right at any sizes within its
 * ranges.
 */
export function canBe(form: string, sizes: Sizes): boolean {
  const mm = (measure: string) => sizes[measure] ?? Number.NaN;
  return possible[form]?.(mm) ?? true;
}

/** A joined chair is narrower behind than in front, and as wide and deep over all as its widest and deepest place. */
const joinedChair = (mm: (measure: string) => number) =>
  mm('depth') > mm('seat-depth') + 30 &&
  mm('width') > mm('seat-width-front') + 20 &&
  mm('width') > mm('crest-width') &&
  mm('seat-width-back') < mm('seat-width-front') * 0.85;

const possible: Readonly<Record<string, (mm: (measure: string) => number) => boolean>> = {
  armchair: joinedChair,
  'side-chair': joinedChair,
};
