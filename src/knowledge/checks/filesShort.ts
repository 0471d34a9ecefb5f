import type { Check } from './check.ts';

/** No file is longer than a person reads in one go; the lists of works are exempt. */
export const filesShort: Check = {
  id: 'files-short',
  protects: 'A file is short enough to be read and checked by a person in one go.',
  find: ({ files }) =>
    files.flatMap((file) => {
      const lines = file.text.split('\n').length - (file.text.endsWith('\n') ? 1 : 0);
      // A list of works is looked up, not read through; splitting it would make a key harder to find.
      if (lines <= longest || /^sources(-[a-z-]+)?\.yaml$/.test(file.path)) return [];
      return [
        {
          code: 'knowledge.files-short',
          file: file.path,
          line: longest + 1,
          entry: '',
          what: `The file has ${lines} lines; ${longest} is the most.`,
          mend: 'Split it by sub-family.',
          example: 'signs/saw-marks.yaml and signs/plane-and-abrasive.yaml',
        },
      ];
    }),
};

const longest = 400;
