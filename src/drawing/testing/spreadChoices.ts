import type { Form } from '../../knowledge/schema.ts';
import { featureChoices } from './allForms.ts';

/**
 * Choices of a form's features among which every two options of different features meet at least once: far fewer than every way
 * to choose, and enough to find a shape that is missing or covered, since few shapes hang on more than two features.
 *
 * Method: of all ways to choose, again and again the one that brings most pairs not yet met.
 */
export function spreadChoices(form: Form): Record<string, string>[] {
  const all = featureChoices(form);
  const pairsOf = all.map(pairs);
  const open = new Set(pairsOf.flat());
  const taken: Record<string, string>[] = [];
  while (open.size > 0) {
    const gains = pairsOf.map((each) => each.filter((pair) => open.has(pair)).length);
    const at = gains.indexOf(Math.max(...gains));
    taken.push(all[at] as Record<string, string>);
    for (const pair of pairsOf[at] as string[]) open.delete(pair);
  }
  return taken;
}

/** Every two options of a choice, each with its feature; the only one where there are no two. */
function pairs(choice: Record<string, string>): string[] {
  const options = Object.entries(choice).map(([feature, option]) => `${feature}=${option}`);
  if (options.length <= 2) return [options.join(' ')];
  return options.flatMap((a, i) => options.slice(i + 1).map((b) => `${a} ${b}`));
}
