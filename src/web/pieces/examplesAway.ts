import { keep, readKept } from '../theme/themeChoice.ts';

const keptUnder = 'underside.examples-away';

/** The worked examples put away on this device: they can't be changed, so the record does not keep it. */
export function examplesAway(): ReadonlySet<string> {
  return new Set((readKept(keptUnder) ?? '').split(' ').filter((id) => id !== ''));
}

/** Puts a worked example away on this device, or takes it out again. */
export function putExampleAway(id: string, away: boolean): void {
  const ids = new Set(examplesAway());
  if (away) ids.add(id);
  else ids.delete(id);
  keep(keptUnder, [...ids].join(' '));
}
