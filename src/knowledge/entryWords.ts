import { z } from 'zod';

/** The name of an entry, as other entries refer to it. */
export const id = z
  .string()
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'an id is lower-case words joined by hyphens');

/** Words that are read as a sentence. */
export const sentence = z.string().regex(/[.?!]$/, 'a sentence ends with a stop');

/** A calendar year the knowledge can speak of. */
export const year = z.number().int().min(1500).max(2030);
