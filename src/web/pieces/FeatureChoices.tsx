import type { Form } from '../../knowledge/schema.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { FormPicture, tellingView } from './FormPicture.tsx';
import { featuresToAsk } from './featuresToAsk.ts';
import { chosenFeatures } from './freshPiece.ts';

type FeatureChoicesProps = {
  form: Form;
  features: Record<string, string>;
  choose: (feature: string, option: string) => void;
  pictures?: boolean;
  readOnly?: boolean;
};

/** How this piece of its form is built: seat, back, stretchers; each option in words, with a small drawing if wanted. */
export function FeatureChoices({ form, features, choose, pictures, readOnly }: FeatureChoicesProps) {
  const chosen = chosenFeatures(form, features);
  return featuresToAsk(form, chosen).map((feature) => (
    <ChoiceField
      key={feature.id}
      label={feature.name}
      choices={feature.options.map((option) => ({
        ...option,
        ...(pictures === true
          ? {
              picture: (
                <FormPicture
                  form={form}
                  features={{ ...chosen, [feature.id]: option.id }}
                  view={tellingView(feature.id)}
                />
              ),
            }
          : {}),
      }))}
      value={chosen[feature.id]}
      save={(option) => choose(feature.id, option)}
      readOnly={readOnly}
    />
  ));
}
