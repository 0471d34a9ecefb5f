/** The ways of working whose marks are told apart. */
export const markKinds = [
  'hand-planed',
  'rotary-planer',
  'straight-saw',
  'circular-saw',
  'band-saw',
  'sliced',
] as const;
export type MarkKind = (typeof markKinds)[number];
