import type { Form } from '../../knowledge/schema.ts';
import type { Json } from '../../piece/event.ts';
import { type Claim, piece } from '../../piece/piece.ts';

type Beginning = {
  id: string;
  form: Form;
  features: Record<string, string>;
  title: string;
  mode: 'in-hand' | 'photo-only';
  claim: Claim;
  openedOn: string;
  examiner: string;
};

/** The document of a piece just taken on; a feature not chosen is the first the form lists. */
export function freshPiece({ id, form, features, title, mode, claim, openedOn, examiner }: Beginning): Json {
  const whole = piece.parse({
    id,
    form: form.id,
    features: chosenFeatures(form, features),
    title: title.trim(),
    mode,
    claim,
    openedOn,
    engagement: { examiner },
  });
  return JSON.parse(JSON.stringify(whole)) as Json;
}

/** The features of a form as chosen; the first option of each that was not. */
export function chosenFeatures(form: Form, chosen: Record<string, string>): Record<string, string> {
  return Object.fromEntries(
    form.features.map((feature) => [feature.id, chosen[feature.id] ?? feature.options[0]?.id ?? '']),
  );
}
