import { type Entry, soundEntries } from './entry.ts';

/**
 * Puts the kinds in the place of the group, wherever an entry names a group of kinds: the parts a sign can be on, those
 * an alteration changes, those a shop's habit is seen on. A kind that is named beside its group keeps its own figure.
 */
export function expandGroups(entries: readonly Entry[]): Entry[] {
  const groups = new Map<string, string[]>();
  for (const { value } of soundEntries(entries, 'partKind')) {
    for (const group of value.in) groups.set(group, [...(groups.get(group) ?? []), value.id]);
  }
  if (groups.size === 0) return [...entries];
  const kindsOf = (names: readonly string[]) => [
    ...new Set(names.flatMap((name) => groups.get(name) ?? [name])),
  ];
  return entries.map((entry): Entry => {
    const [sign] = soundEntries([entry], 'sign');
    if (sign !== undefined) return { ...sign, value: { ...sign.value, on: kindsOf(sign.value.on) } };
    const [asked] = soundEntries([entry], 'ask');
    if (asked !== undefined) return { ...asked, value: { ...asked.value, on: kindsOf(asked.value.on) } };
    const [shop] = soundEntries([entry], 'shop');
    if (shop !== undefined) {
      const habits = shop.value.habits.map((habit) =>
        habit.on === undefined ? habit : { ...habit, on: kindsOf(habit.on) },
      );
      return { ...shop, value: { ...shop.value, habits } };
    }
    const [judged] = soundEntries([entry], 'judgedAlteration');
    if (judged !== undefined)
      return { ...judged, value: { ...judged.value, changes: byKind(judged.value.changes, groups) } };
    const [alteration] = soundEntries([entry], 'alteration');
    if (alteration === undefined) return entry;
    return {
      ...alteration,
      value: {
        ...alteration.value,
        changes: byKind(alteration.value.changes, groups),
        ...(alteration.value.needsPart === undefined
          ? {}
          : { needsPart: kindsOf(alteration.value.needsPart) }),
      },
    };
  });
}

function byKind<Value>(
  written: Readonly<Record<string, Value>>,
  groups: ReadonlyMap<string, readonly string[]>,
): Record<string, Value> {
  const spread = Object.entries(written).flatMap(([name, value]) =>
    (groups.get(name) ?? []).map((kind) => [kind, value] as const),
  );
  return Object.fromEntries([...spread, ...Object.entries(written).filter(([name]) => !groups.has(name))]);
}
