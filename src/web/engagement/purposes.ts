import type { Purpose } from '../../piece/engagement.ts';

/** What an opinion can be wanted for, in words. */
export const purposeChoices: readonly { id: Purpose; name: string }[] = [
  { id: 'curiosity', name: 'To know what it is' },
  { id: 'insurance', name: 'Insurance' },
  { id: 'estate', name: 'An estate' },
  { id: 'donation', name: 'A donation' },
  { id: 'division', name: 'Division among heirs' },
  { id: 'sale', name: 'A sale' },
  { id: 'purchase', name: 'A purchase' },
  { id: 'court', name: 'A court' },
];
