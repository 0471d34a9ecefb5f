import type { Form } from '../../knowledge/schema.ts';
import { featureChoices } from './allForms.ts';

/**
 * Choices of a form's features among which every three options of different features meet at least once: far fewer than every way
 * to choose, and enough to find a shape that is missing or covered, since few shapes hang on more than two features.
 *
 * Method: of all ways to choose, again and again the one that brings most threes not yet met.
 */
export function spreadChoices(form: Form): Record<string, string>[] {
  const all = featureChoices(form);
  const threesOf = all.map(threes);
  const open = new Set(threesOf.flat());
  const taken: Record<string, string>[] = [];
  while (open.size > 0) {
    const gains = threesOf.map((each) => each.filter((three) => open.has(three)).length);
    const at = gains.indexOf(Math.max(...gains));
    taken.push(all[at] as Record<string, string>);
    for (const three of threesOf[at] as string[]) open.delete(three);
  }
  return taken;
}

/** Every three options of a choice, each with its feature; all of them together where there are fewer. */
function threes(choice: Record<string, string>): string[] {
  const options = Object.entries(choice).map(([feature, option]) => `${feature}=${option}`);
  if (options.length <= 3) return [options.join(' ')];
  return options.flatMap((a, i) =>
    options.slice(i + 1).flatMap((b, j) => options.slice(i + j + 2).map((c) => [a, b, c].join(' '))),
  );
}
