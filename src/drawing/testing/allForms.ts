import { compileKnowledge } from '../../knowledge/compileKnowledge.ts';
import { readKnowledgeFolder } from '../../knowledge/readKnowledge.ts';
import type { Form } from '../../knowledge/schema.ts';

/** The forms of the knowledge files, as they stand. */
export async function allForms(): Promise<Form[]> {
  const files = await readKnowledgeFolder(new URL('../../../knowledge', import.meta.url).pathname);
  const needed = files.filter(({ path }) => /(^|\/)(forms\/|making\.yaml$)/.test(path));
  const { knowledge, faults } = compileKnowledge(needed);
  if (knowledge === undefined) throw new Error(`The forms can't be read: ${JSON.stringify(faults[0])}`);
  return Object.values(knowledge.forms);
}

/** Every way to choose one option of each feature. */
export function featureChoices(form: Form): Record<string, string>[] {
  return form.features.reduce<Record<string, string>[]>(
    (choices, { id, options }) =>
      choices.flatMap((choice) => options.map((option) => ({ ...choice, [id]: option.id }))),
    [{}],
  );
}
