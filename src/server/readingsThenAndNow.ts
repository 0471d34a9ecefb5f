import type { ReadingId } from '../piece/readings.ts';
import { outOf } from '../weighing/probabilityWords.ts';
import type { Weighing } from '../weighing/weighing.ts';

/** What a reading came to when it was signed, and comes to now. */
export type ReadingThenAndNow = { id: ReadingId; was: number; now: number };

type Figures = {
  leading: Weighing['leading'];
  readings: readonly Pick<Weighing['readings'][number], 'id' | 'probability'>[];
  years: Pick<Weighing['years'], 'p90'>;
};

/** Whether two weighings of the same findings differ in what is printed of the readings and the years. */
export function areMoved(then: Figures, now: Figures): boolean {
  return (
    then.leading !== now.leading ||
    bothReadings(then, now).some((each) => outOf(each.was) !== outOf(each.now)) ||
    then.years.p90.some((year, end) => Math.round(year) !== Math.round(now.years.p90[end] ?? Number.NaN))
  );
}

/** Each reading as it was and as it is; nothing where one of the two could not be weighed. */
export function bothReadings(then: Figures | null, now: Figures | undefined): ReadingThenAndNow[] {
  const after = new Map(now?.readings.map(({ id, probability }) => [id, probability]));
  return (then?.readings ?? []).flatMap(({ id, probability }) => {
    const is = after.get(id);
    return is === undefined ? [] : [{ id, was: probability, now: is }];
  });
}
