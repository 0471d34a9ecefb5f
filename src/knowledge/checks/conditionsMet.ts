import { type Entry, soundEntries } from '../entry.ts';
import type { Form } from '../schema.ts';
import { type Check, faultIn } from './check.ts';

/** What a sign or a form says of features, options and kinds of part is of those that there are. */
export const conditionsMet: Check = {
  id: 'conditions-met',
  protects: 'A condition that no piece can meet would keep a sign from ever being asked, in silence.',
  find: ({ entries }) => {
    const forms = soundEntries(entries, 'form');
    const options = new Map<string, Set<string>>();
    for (const { value } of forms)
      for (const feature of value.features)
        for (const { id } of feature.options)
          options.set(feature.id, (options.get(feature.id) ?? new Set()).add(id));
    return [
      ...soundEntries(entries, 'sign').flatMap((entry) =>
        Object.entries(entry.value.when ?? {}).flatMap(([feature, chosen]) => {
          const known = options.get(feature);
          const strange = chosen.filter((each) => known?.has(each) !== true);
          if (strange.length === 0) return [];
          return [
            faultIn('conditions-met', entry, ['when', feature], {
              what:
                known === undefined
                  ? `No form has a feature "${feature}".`
                  : `No form has the option ${strange.join(', ')} of the feature "${feature}".`,
              mend: `Name ${known === undefined ? `one of the features ${[...options.keys()].sort().join(', ')}` : `some of ${[...known].sort().join(', ')}`}; or leave it out.`,
              example: 'when: { legs: [cabriole] }',
            }),
          ];
        }),
      ),
      ...forms.flatMap(strangeKinds),
    ];
  },
};

function strangeKinds(entry: Entry<'form'>) {
  const { features, makes = {}, parts } = entry.value as Form;
  const kinds = new Set(parts.map((part) => part.kind));
  const named = [
    ...Object.keys(makes).map((kind) => ({ kind, path: ['makes', kind] })),
    ...features.flatMap((feature, f) =>
      feature.options.flatMap((option, o) =>
        Object.keys(option.makes ?? {}).map((kind) => ({
          kind,
          path: ['features', f, 'options', o, 'makes', kind],
        })),
      ),
    ),
  ];
  return named
    .filter(({ kind }) => !kinds.has(kind))
    .map(({ kind, path }) =>
      faultIn('conditions-met', entry, path, {
        what: `It says how a ${kind} is made, and has no such part.`,
        mend: `Name one of ${[...kinds].sort().join(', ')}; or leave it out.`,
        example: 'makes: { front-leg: { turned: false } }',
      }),
    );
}
