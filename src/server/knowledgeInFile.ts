import { readFileSync, statSync } from 'node:fs';
import { ownNamesOnly } from '../knowledge/ownNamesOnly.ts';
import type { Knowledge } from '../knowledge/schema.ts';

/**
 * Reads the joined knowledge from its file, and again whenever the file is another: a user may add to it while a thread
 * that has read it lives on.
 */
export function knowledgeInFile(file: string): () => Knowledge {
  const last: { stamp: string; knowledge?: Knowledge } = { stamp: '' };
  return () => {
    const { mtimeMs, size, ino } = statSync(file);
    const stamp = `${mtimeMs} ${size} ${ino}`;
    if (last.knowledge === undefined || last.stamp !== stamp) {
      last.knowledge = ownNamesOnly(JSON.parse(readFileSync(file, 'utf8')) as Knowledge);
      last.stamp = stamp;
    }
    return last.knowledge;
  };
}
