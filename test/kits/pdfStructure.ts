import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A node of the structure tree: what it is, its words for who can't see, its contents by their marks, in reading order. */
export type StructureNode = {
  role: string;
  alt?: string;
  children: StructureNode[];
  contents: string[];
  /** What it says, in reading order. */
  text: string;
};

/** What an independent reader finds of a PDF's structure. */
export type PdfStructure = {
  marked: boolean;
  language: string | null;
  title: string;
  fonts: { name: string; embedded: boolean }[];
  pages: {
    tree: StructureNode /** The text in the order of the structure. */;
    read: string;
    untagged: string;
  }[];
};

/** Reads a PDF by another hand than the one that wrote it (pdf.js): tags, reading order, alternative text, fonts. */
export async function readStructure(bytes: Uint8Array): Promise<PdfStructure> {
  const pdf = await getDocument({
    data: bytes.slice(),
    useSystemFonts: false,
    disableFontFace: true,
    fontExtraProperties: true,
    verbosity: 0,
  }).promise;
  const [marks, { info }, fonts, pages] = [
    await pdf.getMarkInfo(),
    await pdf.getMetadata(),
    new Map<string, boolean>(),
    [] as PdfStructure['pages'],
  ];
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number);
    const found = (await page.getStructTree()) as RawNode | null;
    const texts = await textByMark(page);
    const tree = nodeOf(found ?? { role: 'none', children: [] }, texts);
    const inOrder = contentsOf(tree);
    const tagged = new Set(inOrder);
    const list = await page.getOperatorList();
    for (const [at, fn] of list.fnArray.entries())
      if (fn === OPS.setFont) {
        const name = String((list.argsArray[at] as unknown[])[0]);
        const font = (await fontOf(page, name)) as { name?: string; data?: unknown; missingFile?: boolean };
        fonts.set(font.name ?? name, font.missingFile !== true && font.data !== undefined);
      }
    pages.push({
      tree,
      read: inOrder.map((id) => texts.get(id) ?? '').join(' '),
      untagged: [...texts]
        .filter(([id]) => id !== '' && !tagged.has(id))
        .map(([, text]) => text)
        .join(' '),
    });
  }
  const { Title = '', Language = null } = info as { Title?: string; Language?: string | null };
  await pdf.destroy();
  return {
    marked: (marks as { Marked?: boolean } | null)?.Marked === true,
    language: Language,
    title: Title,
    fonts: [...fonts].map(([name, embedded]) => ({ name, embedded })),
    pages,
  };
}

type RawNode = { role?: string; type?: string; id?: string; alt?: string; children?: RawNode[] };
type Page = Awaited<ReturnType<Awaited<ReturnType<typeof getDocument>['promise']>['getPage']>>;

function nodeOf(
  { role = '', alt, children = [] }: RawNode,
  texts: ReadonlyMap<string, string>,
): StructureNode {
  const contents = children.flatMap(({ type, id }) => (type === 'content' && id !== undefined ? [id] : []));
  const inner = children.filter((child) => child.role !== undefined).map((child) => nodeOf(child, texts));
  return {
    role,
    ...(alt === undefined ? {} : { alt }),
    contents,
    text: [...contents.map((id) => texts.get(id) ?? ''), ...inner.map(({ text }) => text)].join(' '),
    children: inner,
  };
}

/** The marks of the contents in the order they are read. */
function contentsOf(node: StructureNode): string[] {
  return [...node.contents, ...node.children.flatMap(contentsOf)];
}

/** Text by the mark it stands under; artifacts under ''. */
async function textByMark(page: Page): Promise<Map<string, string>> {
  const { items } = await page.getTextContent({ includeMarkedContent: true });
  const texts = new Map<string, string>();
  const open: string[] = [];
  for (const item of items as { type?: string; id?: string | null; str?: string }[]) {
    if (item.type === 'beginMarkedContent' || item.type === 'beginMarkedContentProps')
      open.push(item.id ?? '');
    else if (item.type === 'endMarkedContent') open.pop();
    else {
      const at = open.findLast((id) => id !== '') ?? '';
      texts.set(at, `${texts.get(at) ?? ''}${item.str ?? ''}`);
    }
  }
  return texts;
}

function fontOf(page: Page, name: string): Promise<unknown> {
  return new Promise((resolve) => page.commonObjs.get(name, resolve));
}
