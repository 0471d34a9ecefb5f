/** A line that says what must not be said, or a file that is too long. */
export type WordFault = { path: string; line: number; what: string };

const unfinished = /\b(TODO|FIXME|XXX|placeholder|stub(bed)?|not implemented|coming soon)\b/i;
const machinePath = /(^|[\s'"`(=])(\/work|\/root|\/home\/\w+|\/tmp|[A-Z]:\\Users)(\/|\\)/;
const longest = 400;

/** Unfinished work owned up to in words, paths of one machine, and code files past the longest. */
export function wordFaults(files: readonly { path: string; text: string }[]): WordFault[] {
  return files.flatMap(({ path, text }) => {
    const lines = text.split('\n');
    const said = lines.flatMap((line, index) => {
      const found = unfinished.exec(line)?.[0] ?? machinePath.exec(line)?.[2];
      return found === undefined ? [] : [{ path, line: index + 1, what: `It says "${found}".` }];
    });
    const count = lines.length - (text.endsWith('\n') ? 1 : 0);
    const long = /\.(ts|tsx|css)$/.test(path) && count > longest;
    return long
      ? [...said, { path, line: longest + 1, what: `It has ${count} lines: is it one idea?` }]
      : said;
  });
}
