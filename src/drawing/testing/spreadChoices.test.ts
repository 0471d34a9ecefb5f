import { expect, it } from 'vitest';
import { allForms, featureChoices } from './allForms.ts';
import { spreadChoices } from './spreadChoices.ts';

const forms = await allForms();

it.each(forms.map((form) => [form.id, form] as const))('lets every two options of %s meet', (_, form) => {
  const met = (choices: Record<string, string>[]) =>
    new Set(
      choices.flatMap((choice) => {
        const ids = Object.keys(choice);
        return ids.flatMap((a) => ids.map((b) => [a, b].map((id) => `${id}=${choice[id]}`).join(' ')));
      }),
    );
  expect(met(spreadChoices(form))).toEqual(met(featureChoices(form)));
});

it('tries fewer than every way where there are many', () => {
  const many = forms.filter((form) => featureChoices(form).length > 40 && form.features.length > 3);
  expect(many.length).toBeGreaterThan(2);
  for (const form of many)
    expect(spreadChoices(form).length, form.id).toBeLessThan(featureChoices(form).length * 0.6);
});
