import type { Outcome } from '../ground/fault.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import type { Picture } from '../photo/picture.ts';

/** What a command needs of the world; tests hand in their own. */
export type Terminal = {
  /** One line, or several, on standard output: answers only. */
  out(line: string): void;
  /** One line on standard error: what is wrong and what to do. */
  err(line: string): void;
  /** The text of a file, of standard input for `-`. @throws the system's error if it can't be read */
  readInput(file: string): Promise<string>;
  loadKnowledge(): Promise<{ ok: true; knowledge: Knowledge } | { ok: false; lines: string[] }>;
  /** The pixels of a picture file, by its name as it stands in an input. */
  readPicture(file: string): Promise<Outcome<Picture>>;
  yearNow(): number;
};
