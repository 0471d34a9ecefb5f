import { type Entry, soundEntries } from '../entry.ts';
import type { KnowledgeFault } from '../knowledgeFault.ts';
import { type Check, faultIn } from './check.ts';

/** No two entries of a kind share an id, nor do two parts, features or measures of a form. */
export const idsUnique: Check = {
  id: 'ids-unique',
  protects:
    'An id names one entry only, so that a finding recorded today still means the same sign tomorrow.',
  find: ({ entries }) => [...doubledEntries(entries), ...doubledInForms(entries)],
};

function doubledEntries(entries: readonly Entry[]): KnowledgeFault[] {
  const first = new Map<string, Entry>();
  return entries.flatMap((entry) => {
    const key = `${entry.kind} ${entry.id}`;
    const earlier = first.get(key);
    if (earlier === undefined) {
      first.set(key, entry);
      return [];
    }
    const where = `${earlier.file}:${earlier.lineOf(['id'])}`;
    return [faultIn('ids-unique', entry, ['id'], doubled(entry.id, where))];
  });
}

function doubledInForms(entries: readonly Entry[]): KnowledgeFault[] {
  return soundEntries(entries, 'form').flatMap((entry) =>
    (['parts', 'features', 'measures'] as const).flatMap((list) => {
      const seen = new Set<string>();
      return entry.value[list].flatMap((item, index) => {
        if (!seen.has(item.id)) {
          seen.add(item.id);
          return [];
        }
        return [faultIn('ids-unique', entry, [list, index, 'id'], doubled(item.id, `the same ${list}`))];
      });
    }),
  );
}

function doubled(id: string, where: string) {
  return {
    what: `The id ${id} is already used in ${where}.`,
    mend: 'Give this one an id of its own; keep the older id as it is, for recorded findings point to it.',
    example: `id: ${id}-of-the-back`,
  };
}
