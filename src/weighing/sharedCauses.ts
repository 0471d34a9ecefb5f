import type { Look } from '../evidence/preparedCase.ts';
import { sum } from '../ground/statistics.ts';
import { sourcesAtPart } from '../summation/atPart.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import { shopProbabilities } from '../summation/shopPosterior.ts';
import { originWords } from './origins.ts';

/** What several findings have in common. */
export type SharedCause = {
  kind: 'alteration' | 'part' | 'shop' | 'making' | 'tooling' | 'ageing' | 'use' | 'origin' | 'dating';
  id: string;
  name: string;
};

/** A cause is called where it is more probable than not. */
const calledAt = 0.5;

const ofTheWhole: Record<string, SharedCause> = {
  making: { kind: 'making', id: 'making', name: 'The maker’s ways of building' },
  tooling: { kind: 'tooling', id: 'tooling', name: 'The tools it was worked with' },
  ageing: { kind: 'ageing', id: 'ageing', name: 'How its surfaces aged' },
  use: { kind: 'use', id: 'use', name: 'How it was worn in use' },
  origin: { kind: 'origin', id: 'origin', name: 'Where its parts come from' },
  year: { kind: 'dating', id: 'dating', name: 'What dates it' },
  'part-year': { kind: 'dating', id: 'dating', name: 'What dates it' },
};

/**
 * The findings by the cause they share, as an examiner would tell them; only causes of two findings or more.
 *
 * A sign of an alteration goes with that alteration, and so does whatever was seen on a part that the alteration most
 * probably brought. What was seen on a part that was otherwise renewed, or came from another old piece, goes with that part.
 * A habit of the shop that most probably made the piece goes with that shop. All else goes by what the sign hangs on: how
 * the maker built, the tools, aging, use, the parts’ origin, the years.
 */
export function sharedCauses(evaluation: Evaluation): { cause: SharedCause; looks: Look[] }[] {
  const ofParts = new Map(evaluation.looks.map((look) => [look.part, undefined as SharedCause | undefined]));
  for (const part of ofParts.keys()) ofParts.set(part, laterCause(evaluation, part));
  const shop = likelyShop(evaluation);
  const groups = new Map<string, { cause: SharedCause; looks: Look[] }>();
  for (const look of evaluation.looks) {
    const cause = causeOf(evaluation, look, ofParts.get(look.part), shop);
    if (cause === undefined) continue;
    const key = `${cause.kind} ${cause.id}`;
    const group = groups.get(key) ?? { cause, looks: [] };
    group.looks.push(look);
    groups.set(key, group);
  }
  return [...groups.values()].filter((group) => group.looks.length > 1);
}

type LikelyShop = { cause: SharedCause; habits: ReadonlySet<string> };

function causeOf(
  evaluation: Evaluation,
  look: Look,
  ofPart: SharedCause | undefined,
  shop: LikelyShop | undefined,
): SharedCause | undefined {
  const { hangsOn } = look.sign;
  if (hangsOn.startsWith('alteration/'))
    return alterationCause(evaluation, hangsOn.slice('alteration/'.length));
  if (ofPart !== undefined) return ofPart;
  if (hangsOn === 'making' && shop?.habits.has(look.sign.id) === true) return shop.cause;
  return ofTheWhole[hangsOn];
}

/** What most probably brought a part, where that is not the making of the piece. */
function laterCause(evaluation: Evaluation, partId: string): SharedCause | undefined {
  const part = evaluation.model.layout.prepared.parts.find((each) => each.id === partId);
  if (part === undefined || part.id === 'whole') return undefined;
  const sources = sourcesAtPart(evaluation, partId).map(({ source, to, years }) => ({
    source,
    to,
    mass: sum(years),
  }));
  const total = sources.reduce((sum, each) => sum + each.mass, 0);
  const called = sources.find((each) => each.mass > calledAt * total);
  if (called === undefined || called.to === 'own') return undefined;
  const byAlteration = alterationCause(evaluation, called.source);
  if (byAlteration !== undefined) return byAlteration;
  const origin = called.to === 'old' ? 'other-old' : called.to;
  return { kind: 'part', id: part.id, name: `The ${part.name}: ${originWords[origin]}` };
}

function alterationCause({ model }: Evaluation, id: string): SharedCause | undefined {
  const alteration = model.layout.prepared.alterations.find((each) => each.id === id);
  return alteration === undefined ? undefined : { kind: 'alteration', id, name: alteration.name };
}

function likelyShop({ model, whole, posterior }: Evaluation): LikelyShop | undefined {
  const probabilities = shopProbabilities(model, whole, posterior.total);
  const index = probabilities.findIndex((each) => each > calledAt);
  const shop = model.layout.prepared.shops[index];
  if (shop === undefined) return undefined;
  return {
    cause: { kind: 'shop', id: shop.id, name: `The habits of ${shop.name}` },
    habits: new Set(shop.habits.map((habit) => habit.sign)),
  };
}
