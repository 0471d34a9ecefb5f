import type { FormPart, Knowledge } from '../../../knowledge/schema.ts';
import type { WearScore } from './wearWords.ts';

/** Signs of wear where use puts it, the telling ones first. */
const ofPlaces = [
  'front-stretcher-top-worn',
  'arm-ends-worn',
  'crest-back-worn',
  'runner-worn-to-groove',
  'drawer-sides-worn-below',
  'rear-heel-worn-by-tipping',
  'foot-underside-worn',
  'knees-and-rail-rubbed',
  'finger-wear-round-pulls',
  'door-edge-handled',
];

/** Signs of wear where no use puts it. */
const ofWholes = ['wear-where-no-one-touches', 'distress-even-all-over'];

/** The signs that painted wear may be entered as: those that the painted parts can show, and first that of the whole where wear goes against use. */
export function wearSigns(
  signs: Knowledge['signs'],
  parts: readonly FormPart[],
  contrary: WearScore['contrary'],
): string[] {
  const shown = ofPlaces.filter((id) => parts.some(({ kind }) => signs[id]?.on.includes(kind)));
  const wholes = ofWholes.filter((id) => signs[id] !== undefined);
  return contrary.length > 0 ? [...wholes, ...shown] : [...shown, ...wholes];
}
