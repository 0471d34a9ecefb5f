import { beforeAll, expect, it } from 'vitest';
import { examplePapers, type Papers } from '../kits/papers.ts';
import { type PdfStructure, readStructure, type StructureNode } from '../kits/pdfStructure.ts';

const known: { papers: Papers; full: PdfStructure; condition: PdfStructure } = {} as never;
beforeAll(async () => {
  known.papers = await examplePapers();
  known.full = await readStructure(await known.papers.bytesOf('full', 'pdf'));
  known.condition = await readStructure(await known.papers.bytesOf('condition', 'pdf'));
}, 60_000);

const nodes = (node: StructureNode): StructureNode[] => [node, ...node.children.flatMap(nodes)];
const all = ({ pages }: PdfStructure) => pages.flatMap(({ tree }) => nodes(tree));
const bare = (text: string) => text.replace(/\s+/g, '');

// What PDF/UA asks of a document (ISO 14289-1), in our own words: marked and tagged, a title and a language, words for each figure, headings
// that skip no level, tables with heads; checked by pdf.js, which had no part in writing it.
it.each(['full', 'condition'] as const)(
  '%s: is marked, titled, tagged in American English, with every font embedded',
  (paper) => {
    const { marked, title, language, fonts } = known[paper];
    expect([marked, title, language]).toEqual([true, known.papers.piece.title, 'en-US']);
    expect(fonts.length).toBeGreaterThanOrEqual(3);
    expect(fonts.filter(({ embedded }) => !embedded)).toEqual([]);
  },
);

it('every page has tags, and no text stands outside them but head and foot', () => {
  for (const [index, { tree, untagged }] of known.full.pages.entries()) {
    expect(nodes(tree).length, `page ${index + 1}`).toBeGreaterThan(1);
    expect(untagged.trim(), `page ${index + 1}`).toBe('');
  }
});

it('is read in the order of the document: every section under its title as a heading, in the order composed', () => {
  const titles = known.papers.documentOf('full').sections.map(({ title }) => bare(title));
  const headings = all(known.full)
    .filter(({ role }) => /^H[1-6]?$/.test(role))
    .map(({ text }) => bare(text));
  expect(headings.filter((heading) => titles.includes(heading))).toEqual(titles);
  const read = bare(known.full.pages.map((page) => page.read).join(' '));
  const { conclusion, reasons } = known.papers.piece.opinion;
  expect(read.indexOf(bare(conclusion))).toBeGreaterThan(0);
  expect(read.indexOf(bare(reasons))).toBeGreaterThan(read.indexOf(bare(conclusion)));
});

it('skips no level of heading', () => {
  const levels = all(known.full)
    .flatMap(({ role }) => /^H([1-6])$/.exec(role)?.[1] ?? [])
    .map(Number);
  for (const [index, level] of levels.entries())
    expect(level - (levels[index - 1] ?? 1)).toBeLessThanOrEqual(1);
});

it('each figure has words: the drawings what is numbered, the plates what they show', () => {
  const figures = all(known.condition).filter(({ role }) => role === 'Figure');
  expect(figures.length).toBeGreaterThanOrEqual(3);
  expect(figures.filter(({ alt }) => (alt ?? '').trim() === '')).toEqual([]);
  expect(figures.some(({ alt }) => alt?.includes('Numbered by damage'))).toBe(true);
});

it('tables have rows of heads, and every row as many cells', () => {
  const tables = all(known.full).filter(({ role }) => role === 'Table');
  expect(tables.length).toBeGreaterThan(3);
  for (const table of tables) expect(nodes(table).some(({ role }) => role === 'TH')).toBe(true);
});
