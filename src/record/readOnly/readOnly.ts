/** Why a record is open to be looked at only. */
export type ReadOnly = {
  code: 'asked' | 'not-writable' | 'in-use';
  /** What stands on every page, in a line or two. */
  short: string;
  /** What is told of it when asked. */
  words: string;
  /** What to do to enter something, at the end of every refusal. */
  instead: string;
};

/** The sentence for whatever would be recorded. */
export function readOnlyRefusal({ instead }: ReadOnly): string {
  return `This record is open read-only: nothing was entered or changed. ${instead}`;
}

/** Looked at because somebody asked for it. */
export function asked(): ReadOnly {
  return {
    code: 'asked',
    short: 'Nothing can be entered or changed.',
    words: 'Everything can be viewed and printed; nothing can be entered or changed.',
    instead: 'To enter something, start Underside without --read-only.',
  };
}

/** Looked at because the folder, or the record in it, can't be written. */
export function notWritable(): ReadOnly {
  return {
    code: 'not-writable',
    short: 'The folder of this record can’t be written, so nothing can be entered or changed.',
    words:
      'The folder of this record can’t be written (its disk is write-protected, or it belongs to somebody else). Everything can be viewed and printed; nothing can be entered or changed.',
    instead:
      'To enter something, copy the whole folder to a disk of your own and start Underside on the copy.',
  };
}

/**
 * Looked at because another Underside works in the folder.
 *
 * @param where  the address it answers at, or the computer it runs on; empty where it did not say
 * @param time   the time of day of what is seen, `10:45`
 */
export function inUse(where: string, time: string): ReadOnly {
  const at = where === '' ? '' : ` ${where}`;
  return {
    code: 'in-use',
    short: `As it stood at ${time}. Another Underside has this record open, so nothing can be entered here.`,
    words: `Another Underside${at} has this record open. You see it as it stood at ${time}: what is entered there since then is not shown. Everything can be viewed and printed; nothing can be entered or changed here.`,
    instead: `To enter something, use the Underside${at === '' ? ' that has it open' : at}, or close that one and start again.`,
  };
}

/** Says in addition that the record was written by a newer program. */
export function ofNewerProgram(readOnly: ReadOnly): ReadOnly {
  return {
    ...readOnly,
    short: `${readOnly.short} It was written by a newer Underside: something may be missing here.`,
    words: `${readOnly.words} The record was written by a newer Underside: what only that program knows is missing here, so a report printed here may lack something.`,
    instead: 'To enter something, start the newer Underside that wrote this record.',
  };
}
