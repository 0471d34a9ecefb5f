/** A term of the Art & Architecture Thesaurus, as Linked Art points to one. */
export type Term = { id: string; type: string; _label: string; classified_as?: Term[] };

/** @source the terms as Linked Art's own documentation prints them (test/reference/aat-terms.json holds each id) */
export const terms = {
  typeOfWork: term('300435443', 'Type of Work'),
  primaryName: term('300404670', 'Primary Name'),
  localNumber: term('300404621', 'Local Number'),
  height: term('300055644', 'height'),
  width: term('300055647', 'width'),
  depth: term('300072633', 'depth'),
  length: term('300055645', 'length'),
  thickness: term('300055646', 'thickness'),
  diameter: term('300055624', 'diameter'),
  millimeters: { ...term('300379097', 'millimeters'), type: 'MeasurementUnit' },
  dollars: { ...term('300411994', 'US Dollars'), type: 'Currency' },
  appraising: term('300054622', 'appraising'),
  provenanceActivity: term('300055863', 'Provenance Activity'),
  condition: statement('300435425', 'Condition Statement'),
  materials: statement('300435429', 'Materials Statement'),
  provenance: statement('300435438', 'Provenance Statement'),
  valuation: statement('300435426', 'Valuation Statement'),
} as const;

export function term(aat: string, label: string): Term {
  return { id: `http://vocab.getty.edu/aat/${aat}`, type: 'Type', _label: label };
}

/** A kind of statement is itself classified as one. */
function statement(aat: string, label: string): Term {
  return { ...term(aat, label), classified_as: [term('300418049', 'Statement')] };
}
