import type { Entry } from '../entry.ts';
import type { KnowledgeFault } from '../knowledgeFault.ts';
import type { YamlPath } from '../parseYaml.ts';
import type { Family, KnowledgeFile } from '../readEntries.ts';

/** All that a check may look at. */
export type CheckedKnowledge = {
  entries: readonly Entry[];
  families: readonly Family[];
  files: readonly KnowledgeFile[];
};

/** One rule of the knowledge files. */
export type Check = {
  id: string;
  /** What it protects, in one sentence. */
  protects: string;
  find: (knowledge: CheckedKnowledge) => KnowledgeFault[];
};

/** A fault in an entry, with the line of the path it is at. */
export function faultIn(
  check: string,
  entry: Entry,
  path: YamlPath,
  words: { what: string; mend: string; example: string },
): KnowledgeFault {
  return {
    code: `knowledge.${check}`,
    file: entry.file,
    line: entry.lineOf(path),
    entry: entry.id,
    path,
    ...words,
  };
}
