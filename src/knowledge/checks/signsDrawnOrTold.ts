import { soundEntries } from '../entry.ts';
import { type Check, faultIn } from './check.ts';

/** Every sign of the house has a drawing or one reason why it has none, and never both. */
export const signsDrawnOrTold: Check = {
  id: 'signs-drawn-or-told',
  protects: 'Who looks for the picture of a sign finds it, or reads why there is none.',
  find: ({ entries }) => {
    const drawn = new Set(soundEntries(entries, 'signDrawing').flatMap(({ value }) => value.signs));
    const reasons = soundEntries(entries, 'notDrawn');
    const told = reasons.flatMap(({ value }) => value.signs);
    return [
      ...soundEntries(entries, 'sign').flatMap((entry) => {
        if (entry.mine || drawn.has(entry.id) || told.includes(entry.id)) return [];
        return [
          faultIn('signs-drawn-or-told', entry, ['id'], {
            what: `${entry.id} has no drawing and no reason why not.`,
            mend: 'Draw it in sign-drawings/, or name it under a reason in signs-not-drawn.yaml.',
            example: `signs: [${entry.id}]`,
          }),
        ];
      }),
      ...reasons.flatMap((entry) =>
        entry.value.signs.flatMap((id, index) => {
          const twice = told.indexOf(id) !== told.lastIndexOf(id);
          if (!drawn.has(id) && !twice) return [];
          return [
            faultIn('signs-drawn-or-told', entry, ['signs', index], {
              what: twice ? `${id} stands under two reasons.` : `${id} is drawn.`,
              mend: twice ? 'Keep the one that tells most.' : 'Take it off this list.',
              example: 'signs: [finish-aniline-stain]',
            }),
          ];
        }),
      ),
    ];
  },
};
