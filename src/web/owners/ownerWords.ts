import { capital } from '../../ground/words.ts';
import {
  type Directness,
  type EvidenceKind,
  evidenceKinds,
  type HolderRole,
  meansPhrases,
  type Owner,
} from '../../piece/owner.ts';
import { evidenceWords } from '../../provenance/ownersOf.ts';
import { formatYears } from '../../units/years.ts';
import type { Choice } from '../fields/ChoiceField.tsx';

/** What a person or firm had to do with the piece, in words. */
export const roleChoices: readonly { id: HolderRole; name: string }[] = [
  { id: 'owner', name: 'Owner' },
  { id: 'dealer', name: 'Dealer' },
  { id: 'agent', name: 'Agent' },
  { id: 'auction-house', name: 'Auction house' },
  { id: 'custodian', name: 'Keeper, without title' },
];

/** How a piece can come to someone; words of one's own are possible besides. */
export const meansChoices: readonly { id: string; name: string }[] = [
  { id: '', name: 'Not known' },
  ...Object.entries(meansPhrases).map(([id, phrase]) => ({
    id,
    name: `${capital(phrase)} …`,
  })),
];

/** How sure the examiner is of a holding. */
export const surenessChoices: readonly Choice<Owner['sure']>[] = [
  { id: 'plain', name: 'Sure' },
  { id: 'fairly', name: 'Fairly sure' },
  { id: 'hint', name: 'Only a hint' },
];

export const directChoices: readonly Choice<Directness>[] = [
  { id: 'yes', name: 'Straight from the one before' },
  { id: 'no', name: 'Not straight' },
  { id: 'unknown', name: 'Not known' },
];

/** What a holding is known by, the strongest first. */
export const evidenceChoices: readonly { id: EvidenceKind | ''; name: string }[] = [
  { id: '', name: 'Not stated' },
  ...evidenceKinds.map((id) => ({ id, name: evidenceWords[id] })),
];

/** An owner in one line: name, place, years. */
export function ownerLine({ name, place, began, ended }: Owner): string {
  const from = began === undefined ? '' : formatYears(began);
  const to = ended === undefined ? '' : formatYears(ended);
  const years = from === '' && to === '' ? 'years not known' : `${from || '?'} to ${to || '?'}`;
  return [name.trim() || 'Someone not yet named', place.trim(), years]
    .filter((each) => each !== '')
    .join(', ');
}
