import { type Check, faultIn } from './check.ts';

/** A file bears the name of the form, shop or family it holds. */
export const fileNames: Check = {
  id: 'file-names',
  protects: 'A reader finds a form, a shop or a family of signs by the name of its file.',
  find: ({ entries, families }) => [
    ...entries.flatMap((entry) => {
      if (entry.kind !== 'form' && entry.kind !== 'shop') return [];
      if (nameOf(entry.file) === entry.id) return [];
      return [faultIn('file-names', entry, ['id'], wordsFor(entry.id, entry.file))];
    }),
    ...families.flatMap((family) =>
      nameOf(family.file) === family.id
        ? []
        : [
            {
              code: 'knowledge.file-names',
              file: family.file,
              line: 1,
              entry: family.id,
              ...wordsFor(family.id, family.file),
            },
          ],
    ),
  ],
};

function nameOf(file: string): string {
  return file
    .replace(/^.*\//, '')
    .replace(/^mine-/, '')
    .replace(/\.yaml$/, '');
}

function wordsFor(id: string, file: string) {
  return {
    what: `The file ${file} holds ${id}.`,
    mend: `Name the file ${id}.yaml, or correct the id.`,
    example: `${file.replace(/[^/]*$/, '')}${id}.yaml`,
  };
}
