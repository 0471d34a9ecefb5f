import type { PreparedCase } from '../evidence/preparedCase.ts';
import type { Ask } from '../knowledge/askSchema.ts';
import type { Knowledge, Sign } from '../knowledge/schema.ts';
import type { Weighing } from './weighing.ts';

/** One sign that an asked-for picture may show, on one part. */
export type AskedSign = {
  sign: string;
  part: string | null;
  shows: 'clear' | 'hint';
  /** By how much seeing it, or not, is expected to lower the doubt over the readings. */
  bits: number;
};

/** What to ask the owner for, with what each picture is asked for. */
export type PhotographsToAsk = {
  asks: { id: string; kind: Ask['kind']; name: string; ask: string; caution?: string; shows: AskedSign[] }[];
  /** Signs of this piece that no photograph shows, by how much they would tell in the hand. */
  onlyInHand: { sign: string; part: string | null }[];
};

/**
 * Which photographs and answers to ask for when the piece itself is not there: those in which a sign not yet answered may
 * be seen, in the order worth asking.
 *
 * A sign counts for the first picture that takes in its part and moves what it needs moved. Signs that a photograph cannot
 * show are listed apart, so that nobody expects them of a picture.
 *
 * @param looks  next looks worked out for photographs only
 */
export function photographsToAsk(prepared: PreparedCase, looks: Weighing['nextLooks']): PhotographsToAsk {
  const { knowledge, form, parts } = prepared;
  const kindOf = new Map(parts.map((part) => [part.id, part.kind]));
  const asks = Object.values(knowledge.asks ?? {})
    .filter((ask) => ask.families === undefined || ask.families.includes(form.family))
    .filter((ask) => ask.on.some((kind) => kind === 'whole' || [...kindOf.values()].includes(kind)))
    .toSorted((a, b) => a.order - b.order);
  const shows = new Map<string, AskedSign[]>();
  for (const look of looks) {
    const sign = knowledge.signs[look.sign];
    const kind = look.part === null ? 'whole' : kindOf.get(look.part);
    if (sign === undefined || kind === undefined || sign.inPhoto === 'no') continue;
    const ask = asks.find((each) => each.kind === 'photograph' && takesIn(each, sign, kind));
    if (ask === undefined) continue;
    const told = { sign: look.sign, part: look.part, shows: sign.inPhoto, bits: look.bits };
    shows.set(ask.id, [...(shows.get(ask.id) ?? []), told]);
  }
  return {
    asks: asks.map(({ id, kind, name, ask, caution }) => ({
      id,
      kind,
      name,
      ask,
      ...(caution === undefined ? {} : { caution }),
      shows: (shows.get(id) ?? []).toSorted((a, b) => b.bits - a.bits),
    })),
    onlyInHand: onlyInHand(knowledge, prepared),
  };
}

function takesIn(ask: Ask, sign: Sign, kind: string): boolean {
  return ask.on.includes(kind) && ask.needs.some((need) => need === sign.needs);
}

function onlyInHand(knowledge: Knowledge, { parts, looks, alterations }: PreparedCase) {
  const answered = new Set(looks.map((look) => look.sign.id));
  return Object.values(knowledge.signs).flatMap((sign) => {
    if (sign.inPhoto !== 'no' || answered.has(sign.id)) return [];
    const needed = /^alteration\/(.+)$/.exec(sign.hangsOn)?.[1];
    if (needed !== undefined && !alterations.some((each) => each.id === needed)) return [];
    const part = parts.find((each) => sign.on.includes(each.kind));
    return part === undefined ? [] : [{ sign: sign.id, part: part.id === 'whole' ? null : part.id }];
  });
}
