import type { PartMake } from '../piece/partMake.ts';
import type { Form, Sign } from './schema.ts';

/** What is known of a piece that a sign's conditions ask after. */
export type KnownOfPiece = {
  /** The form's choices; the first option of each that is left out. */
  features: Readonly<Record<string, string>>;
  /** What was said of how a part is made, by the part's id. */
  makes?: Readonly<Record<string, Partial<Record<PartMake, boolean>>>>;
};

/** Whether a part is of a make: as was said of it, else as the form's choices or the form settle it; undefined where neither does. */
export function isOfMake(
  make: PartMake,
  part: { id?: string | undefined; kind: string },
  form: Pick<Form, 'features' | 'makes'>,
  known: KnownOfPiece,
): boolean | undefined {
  const said = part.id === undefined ? undefined : known.makes?.[part.id]?.[make];
  if (said !== undefined) return said;
  for (const feature of form.features) {
    const settled = optionOf(feature, known).makes?.[part.kind]?.[make];
    if (settled !== undefined) return settled;
  }
  return form.makes?.[part.kind]?.[make];
}

/**
 * True unless what is known of the piece rules out that a sign can be on a part: the piece has another of the features that
 * the sign goes with, or the part is not of the make it asks for. A form without such a feature is not held by it.
 */
export function canApply(
  sign: Pick<Sign, 'when' | 'make'>,
  part: { id?: string | undefined; kind: string },
  form: Pick<Form, 'features' | 'makes'>,
  known: KnownOfPiece,
): boolean {
  const featured = Object.entries(sign.when ?? {}).every(([id, options]) => {
    const feature = form.features.find((each) => each.id === id);
    return feature === undefined || options.includes(optionOf(feature, known).id);
  });
  return featured && (sign.make === undefined || isOfMake(sign.make, part, form, known) !== false);
}

type Feature = Form['features'][number];

function optionOf(feature: Feature, { features }: KnownOfPiece): Feature['options'][number] {
  const chosen = feature.options.find((option) => option.id === features[feature.id]) ?? feature.options[0];
  if (chosen === undefined) throw new RangeError(`The feature ${feature.id} has no options.`);
  return chosen;
}
