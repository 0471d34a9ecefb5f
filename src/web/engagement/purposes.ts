import { purposeNames } from '../../engagement/purposeNames.ts';
import { type Purpose, purpose } from '../../piece/engagement.ts';

/** What an opinion can be wanted for, in words. */
export const purposeChoices: readonly { id: Purpose; name: string }[] = purpose.options.map((id) => ({
  id,
  name: purposeNames[id],
}));
