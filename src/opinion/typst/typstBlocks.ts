import type { Block, DrawnPicture, Section, Words } from '../opinionDocument.ts';
import type { Paper } from './plateLayout.ts';
import { type PicturesAtHand, smallPlate, typstPlate } from './typstPlate.ts';
import { typstArray, typstMm, typstString, typstWords } from './typstText.ts';

/** A picture the page takes in, under the name that the source calls it by. */
export type NamedPicture = { path: string; svg: string };

/** Collects the program's own pictures while the source is written. */
export type PictureShelf = { put(svg: string): string; all(): NamedPicture[] };

/** A shelf that names pictures by their order; the same picture twice is kept once. */
export function pictureShelf(): PictureShelf {
  const pathOf = new Map<string, string>();
  return {
    put(svg) {
      const path = pathOf.get(svg) ?? `/drawn/${pathOf.size + 1}.svg`;
      pathOf.set(svg, path);
      return path;
    },
    all: () => [...pathOf].map(([svg, path]) => ({ path, svg })),
  };
}

/** One section as Typst source. */
export function typstSection(
  section: Section,
  shelf: PictureShelf,
  plates: PicturesAtHand,
  paper: Paper,
): string {
  const start = section.apart ? '#pagebreak(weak: true)\n' : '';
  return `${start}#section(${typstString(section.title)})\n${section.blocks.map((block) => typstBlock(block, shelf, plates, paper)).join('\n')}`;
}

/**
 * One block as Typst source.
 *
 * @param plates  the photos whose pictures are at hand
 */
export function typstBlock(block: Block, shelf: PictureShelf, plates: PicturesAtHand, paper: Paper): string {
  switch (block.kind) {
    case 'paragraph':
      return `#said(${typstString(block.as ?? 'plain')}, ${typstWords(block.words)})`;
    case 'heading':
      return `#subsection(${typstString(block.words)})`;
    case 'list':
      return `#points(${typstString(block.as ?? 'plain')}, ${typstArray(block.items.map(typstWords))})`;
    case 'facts':
      return `#facts(${typstRows(block.rows)})`;
    case 'table':
      return typstTable(block);
    case 'notice':
      return `#notice(${typstString(block.tone)}, ${typstString(block.title)}, ${typstArray(block.words.map(typstWords))})`;
    case 'pictures':
      return `#pictures(${typstArray(block.pictures.map((picture) => drawn(picture, shelf)))})`;
    case 'key':
      return `#key(${typstString(block.title)}, ${typstArray(
        block.entries.map(({ svg, words }) => `(${typstString(shelf.put(svg))}, ${typstString(words)})`),
      )})`;
    case 'plate':
      return typstPlate(block.plate, plates, paper);
    case 'front':
      return `#front(${typstRows(block.rows)}, ${smallPlate(block.plate, plates, 56, 74)})`;
    case 'strip':
      return `#strip(${typstArray(block.plates.map((plate) => smallPlate(plate, plates, 38, 40)))})`;
    case 'signature':
      return `#signature(${typstArray(block.statements.map(typstWords))}, ${typstString(block.name)}, ${typstString(block.day)}, draft: ${block.draft})`;
  }
}

function typstRows(rows: Extract<Block, { kind: 'facts' }>['rows']): string {
  return typstArray(
    rows.map(({ name, words }) => `(${typstString(name)}, ${typstArray(words.map(typstWords))})`),
  );
}

function drawn(picture: DrawnPicture, shelf: PictureShelf): string {
  return `(path: ${typstString(shelf.put(picture.svg))}, alt: ${typstString(picture.alternative)}, caption: ${typstString(picture.caption)}, width: ${typstMm(picture.widthMm)}, height: ${typstMm(picture.heightMm)})`;
}

function typstTable(block: Extract<Block, { kind: 'table' }>): string {
  const columns = typstArray(
    block.columns.map(
      ({ name, share, end }) => `(${typstString(name)}, ${share}fr, ${end === true ? 'right' : 'left'})`,
    ),
  );
  const groups = typstArray(
    block.groups.map(
      ({ name, note, rows }) =>
        `(${orNone(name)}, ${orNone(note)}, ${typstArray(rows.map((row) => typstArray(row.map(typstCell))))})`,
    ),
  );
  const rows = block.groups.reduce((sum, group) => sum + group.rows.length, 0);
  return `#ledger(${typstString(block.caption)}, ${columns}, ${groups}, whole: ${rows <= mostRowsKeptWhole && !hasLong(block)})`;
}

/** A table of so few rows is kept on one page. */
const mostRowsKeptWhole = 10;

/** Cells with more signs than this may be broken over pages: they could be longer than one. */
const longCell = 900;

function typstCell(words: Words): string {
  return plainLength(words) > longCell
    ? `table.cell(breakable: true, ${typstWords(words)})`
    : typstWords(words);
}

function hasLong(block: Extract<Block, { kind: 'table' }>): boolean {
  return block.groups.some(({ rows }) =>
    rows.some((row) => row.some((cell) => plainLength(cell) > longCell)),
  );
}

function plainLength(words: Words): number {
  return typeof words === 'string' ? words.length : JSON.stringify(words).length;
}

function orNone(text: string | undefined): string {
  return text === undefined ? 'none' : typstString(text);
}
