import { partsOf } from '../../drawing/partsOf.ts';
import type { Form } from '../../knowledge/schema.ts';

/**
 * The choices of a form that mean something with those made so far: the kind of splat is not asked of a ladder back.
 * A choice that has the name of a kind of part is left out where the piece has no such part.
 */
export function featuresToAsk(form: Form, features: Record<string, string>): Form['features'] {
  const there = new Set(partsOf(form, features).map((part) => part.kind));
  const known = new Set(form.parts.map((part) => part.kind));
  return form.features.filter((feature) => !known.has(feature.id) || there.has(feature.id));
}
