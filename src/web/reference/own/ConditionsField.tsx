import type { Knowledge } from '../../../knowledge/schema.ts';
import { ListPicker } from './ListPicker.tsx';

type Props = {
  path: string;
  required: boolean;
  forms: Knowledge['forms'];
  value: unknown;
  onValue: (value: Record<string, string[]>) => void;
};

/** The choices of a form that a sign goes with, picked from all that any form offers. */
export function ConditionsField({ path, required, forms, value, onValue }: Props) {
  const given = (value ?? {}) as Record<string, string[]>;
  return (
    <ListPicker
      path={path}
      required={required}
      options={choices(forms)}
      value={Object.entries(given).flatMap(([feature, options]) =>
        options.map((each) => `${feature}:${each}`),
      )}
      onValue={(ids) => onValue(byFeature(ids))}
    />
  );
}

function choices(forms: Knowledge['forms']): { id: string; name: string }[] {
  const all = Object.values(forms).flatMap(({ features }) =>
    features.flatMap((feature) =>
      feature.options.map(
        (option) => [`${feature.id}:${option.id}`, `${feature.name}: ${option.name}`] as const,
      ),
    ),
  );
  return [...new Map(all)].map(([id, name]) => ({ id, name })).sort((a, b) => a.name.localeCompare(b.name));
}

function byFeature(ids: readonly string[]): Record<string, string[]> {
  const found: Record<string, string[]> = {};
  for (const id of ids) {
    const [feature = '', option = ''] = id.split(':');
    found[feature] = [...(found[feature] ?? []), option];
  }
  return found;
}
