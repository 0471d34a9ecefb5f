import type { Look } from '../evidence/preparedCase.ts';

/** What was looked for at one part, not what was found; looks that hang on an alteration are not among it. */
export type Asked = {
  /** The same for all parts where the same was looked for. */
  name: string;
  causes: ReadonlySet<string>;
  /** Signs of the maker's habit. */
  habits: ReadonlySet<string>;
};

/** By part: what was looked for at it; parts that nothing was looked for on are left out. */
export function askedAt(looks: readonly Look[]): ReadonlyMap<string, Asked> {
  const byPart = new Map<string, { causes: Set<string>; habits: Set<string> }>();
  for (const { part, sign } of looks) {
    if (sign.hangsOn.startsWith('alteration/')) continue;
    const mine = byPart.get(part) ?? { causes: new Set(), habits: new Set() };
    byPart.set(part, mine);
    mine.causes.add(sign.hangsOn);
    if (sign.hangsOn === 'making') mine.habits.add(sign.id);
  }
  return new Map(
    [...byPart].map(([part, { causes, habits }]) => [
      part,
      { name: [...[...causes].sort(), ...[...habits].sort()].join(), causes, habits },
    ]),
  );
}

/** All that looks say of some parts and alterations, as a text: looks of the same text say the same, in the same order. */
export function saidOf(
  parts: readonly { id: string }[],
  alterations: readonly { id: string }[],
  looks: readonly Look[],
): string {
  const of = new Set([...parts.map(({ id }) => id), ...alterations.map(({ id }) => `alteration/${id}`)]);
  let said = '';
  for (const { sign, part, state, sure, alike, measured, byState } of looks) {
    const at = sign.hangsOn.startsWith('alteration/') ? sign.hangsOn : part;
    if (!of.has(at)) continue;
    const report = measured === undefined ? `${state} ${sure}` : JSON.stringify([measured, byState]);
    said += `${at} ${sign.id} ${report} ${alike ?? 1};`;
  }
  return said;
}
