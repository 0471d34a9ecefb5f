import type { Purpose } from '../piece/engagement.ts';

/** What an opinion can be wanted for, as it is asked and printed. */
export const purposeNames: Record<Purpose, string> = {
  curiosity: 'To know what it is',
  insurance: 'Insurance: what a replacement costs',
  estate: 'An estate',
  gift: 'A gift to a person',
  donation: 'A donation to a charity or museum',
  division: 'Division among heirs',
  sale: 'A sale',
  purchase: 'A purchase',
  damage: 'Damage or loss',
  wildlife: 'Age and materials, for wildlife law',
  court: 'A court',
};
