/** One import or re-export of a file. */
export type Import = { from: string; typesOnly: boolean; line: number };

/** The imports of a TypeScript file, re-exports and `import()` too; what stands in comments is left out. */
export function readImports(text: string): Import[] {
  const code = withoutComments(text);
  const statement =
    /\b(?:import|export)(\s+type)?\s[^'";]*?\bfrom\s*['"]([^'"]+)['"]|\bimport\s*['"]([^'"]+)['"]|\bimport\s*\(\s*['"]([^'"]+)['"]/g;
  return [...code.matchAll(statement)].map((match) => ({
    from: match[2] ?? match[3] ?? match[4] ?? '',
    typesOnly: match[1] !== undefined,
    line: code.slice(0, match.index).split('\n').length,
  }));
}

/** The code with comments blanked out, lines kept. */
export function withoutComments(text: string): string {
  const blank = (found: string) => found.replace(/[^\n]/g, ' ');
  return text
    .replace(/\/\*[\s\S]*?\*\//g, blank)
    .replace(/(^|[^:'"`])\/\/[^\n]*/g, (found, before) => before + blank(found.slice(before.length)));
}
