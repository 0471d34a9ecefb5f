/** How many dated copies stay: one for each of so many days, weeks and months that have one. */
const kept = { days: 7, weeks: 4, months: 12 };

/**
 * Which copies may go: all but the newest of each of the last 7 days, 4 weeks and 12 months that have one. The newest
 * copy of all always stays.
 *
 * @param copies  moments of the copies, by name, in any order
 * @returns names of those that may go, the oldest first
 */
export function mayGo(copies: readonly { name: string; madeAt: Date }[]): string[] {
  const newestFirst = [...copies].sort((a, b) => b.madeAt.getTime() - a.madeAt.getTime());
  const stays = new Set<string>();
  for (const [count, periodOf] of [
    [kept.days, dayOf],
    [kept.weeks, weekOf],
    [kept.months, monthOf],
  ] as const) {
    const periods = new Set<string>();
    for (const { name, madeAt } of newestFirst) {
      const period = periodOf(madeAt);
      if (periods.has(period)) continue;
      if (periods.size === count) break;
      periods.add(period);
      stays.add(name);
    }
  }
  return newestFirst
    .map(({ name }) => name)
    .filter((name) => !stays.has(name))
    .reverse();
}

function dayOf(moment: Date): string {
  return `${moment.getFullYear()}-${moment.getMonth()}-${moment.getDate()}`;
}

/** The Monday of its week. */
function weekOf(moment: Date): string {
  const monday = new Date(
    moment.getFullYear(),
    moment.getMonth(),
    moment.getDate() - ((moment.getDay() + 6) % 7),
  );
  return dayOf(monday);
}

function monthOf(moment: Date): string {
  return `${moment.getFullYear()}-${moment.getMonth()}`;
}
