import { soundEntries } from '../entry.ts';
import { type Check, faultIn } from './check.ts';

/** A shop's habit is of a sign that hangs on the making, and on parts where that sign can be. */
export const habitsFit: Check = {
  id: 'habits-fit',
  protects: 'Every habit of a shop is weighed: only signs that hang on the making differ from shop to shop.',
  find: ({ entries }) => {
    const signs = new Map(soundEntries(entries, 'sign').map((entry) => [entry.id, entry.value]));
    return soundEntries(entries, 'shop').flatMap((entry) =>
      entry.value.habits.flatMap((habit, index) => {
        const sign = signs.get(habit.sign);
        if (sign === undefined) return [];
        const strange = (habit.on ?? []).filter((kind) => !sign.on.includes(kind));
        const what =
          sign.hangsOn !== 'making'
            ? `${habit.sign} hangs on ${sign.hangsOn}, which no shop can make a habit of.`
            : strange.length > 0
              ? `${habit.sign} can't be on ${strange.join(', ')}.`
              : undefined;
        if (what === undefined) return [];
        return [
          faultIn('habits-fit', entry, ['habits', index, 'sign'], {
            what,
            mend: 'Name a sign that hangs on making, on kinds of part that the sign itself lists.',
            example: '- { sign: rail-open-dovetail, on: [front-rail], shows: "90, 70–97" }',
          }),
        ];
      }),
    );
  },
};
