/** Something wrong in the knowledge files, as data: where it stands, what is wrong, how to mend it, and an entry that is right. */
export type KnowledgeFault = {
  /** `knowledge.` and the id of the check that found it. */
  code: string;
  /** Path of the file from the knowledge folder. */
  file: string;
  /** Line in the file, from 1. */
  line: number;
  /** Id of the entry, or '' for the file as a whole. */
  entry: string;
  /** The field it stands at within the entry, where one can be named. */
  path?: readonly PropertyKey[];
  what: string;
  mend: string;
  /** YAML that is right, to hold against the faulty one. */
  example: string;
};
