import type { Sign } from '../knowledge/schema.ts';
import { campaignOf } from './campaigns.ts';
import { figureRange } from './figures.ts';
import type { Look } from './preparedCase.ts';

/**
 * Tells every look on how many parts the same was found. One shop sawed and nailed all parts of a piece, one hand put on false
 * wear, and one eye reads it all: a tool mark or a fastener found on six parts is not six witnesses. Signs of one group count as
 * the same.
 *
 * The maker's shared habits and the true aging and use of the whole piece are common causes in the model itself; where a part
 * comes from is a question for each part.
 */
export function withAlike(looks: readonly Look[]): Look[] {
  const parts = new Map<string | undefined, Set<string>>();
  for (const look of looks) {
    const kind = kindOf(look);
    parts.set(kind, (parts.get(kind) ?? new Set()).add(look.part));
  }
  return looks.map((look) => {
    const kind = kindOf(look);
    const alike = kind === undefined ? 1 : (parts.get(kind)?.size ?? 1);
    if (alike === (look.alike ?? 1)) return look;
    const { alike: _, ...single } = look;
    return alike === 1 ? single : { ...single, alike };
  });
}

/** On how many parts the same was found, counting this look, among others that may hold an answer for it already. */
export function alikeAmong(look: Look, others: readonly Look[]): number {
  return withAlike([...others, look]).at(-1)?.alike ?? 1;
}

/**
 * How many witnesses n like looks count for, where each two of them share so much of what they tell: n / (1 + (n − 1) · shared).
 * One counts as one; ever so many count as 1 / shared.
 *
 * @source the effective size of a clustered sample, L. Kish, Survey Sampling (1965), from memory
 */
export function witnesses(alike: number, shared: number): number {
  return alike / (1 + (alike - 1) * shared);
}

/** What a look is alike in to others; undefined where every part answers for itself. */
function kindOf({ sign, state, byState }: Look): string | undefined {
  if (byState !== undefined) return undefined;
  const campaign = campaignOf({ sign });
  if (campaign !== undefined) return `campaign ${campaign} ${state}`;
  return isOfOneHand(sign) ? `${sign.group ?? sign.id} ${state}` : undefined;
}

/** True of what one shop's tools and fasteners leave on all parts, of what one alteration leaves, and of wear and age put on. */
function isOfOneHand({ hangsOn, shows }: Sign): boolean {
  if (hangsOn === 'tooling' || hangsOn === 'part-year' || hangsOn.startsWith('alteration/')) return true;
  const share = (state: string) => (shows[state] === undefined ? 0 : figureRange(shows[state]).best);
  return share('imitated') > share('natural') && share('imitated') > share('none');
}
