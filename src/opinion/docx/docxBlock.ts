import {
  ExternalHyperlink,
  HeadingLevel,
  ImageRun,
  Paragraph,
  type ParagraphChild,
  Table,
  TableCell,
  TableRow,
  TextRun,
  WidthType,
} from 'docx';
import sharp from 'sharp';
import { dayWords } from '../../units/days.ts';
import type { Block, DrawnPicture, Plate, Words } from '../opinionDocument.ts';
import type { MarkedPlates } from '../pdf/markedPlate.ts';

type Flow = Paragraph | Table;

/** The width of the text, in pixels as a word processor counts them (96 to the inch). */
const textWidthPx = 610;

/** One block as the paragraphs and tables of a word processor. */
export async function docxBlock(block: Block, plates: MarkedPlates): Promise<Flow[]> {
  switch (block.kind) {
    case 'paragraph':
      return [
        styled(block.words, { lead: 'Lead', note: 'Note', own: 'Own', plain: 'Normal' }[block.as ?? 'plain']),
      ];
    case 'heading':
      return [new Paragraph({ heading: HeadingLevel.HEADING_2, children: runs(block.words) })];
    case 'list':
      return block.items.map((item) => new Paragraph({ bullet: { level: 0 }, children: runs(item) }));
    case 'facts':
      return [factsTable(block.rows)];
    case 'front':
      return [factsTable(block.rows), ...plateOf(block.plate, plates, 260, false)];
    case 'strip':
      return block.plates.flatMap((plate) => plateOf(plate, plates, 220, false));
    case 'table':
      return [styled([{ strong: block.caption }], 'Note'), ledger(block), styled('', 'Normal')];
    case 'notice':
      return [styled([{ strong: block.title }], 'Own'), ...block.words.map((words) => styled(words, 'Own'))];
    case 'pictures':
      return (await Promise.all(block.pictures.map(drawn))).flat();
    case 'key':
      return [
        styled([{ strong: block.title }], 'Note'),
        ...block.entries.map(
          ({ words }) => new Paragraph({ bullet: { level: 0 }, style: 'Note', children: runs(words) }),
        ),
      ];
    case 'plate':
      return plateOf(block.plate, plates, textWidthPx, true);
    case 'signature':
      return [
        ...block.statements.map((words) => styled(words, 'Normal')),
        styled(block.draft ? [{ strong: 'Not signed: a draft.' }] : '', 'Normal'),
        styled(`Signature: ______________________________   ${block.name}`, 'Normal'),
        styled(`Date: ${block.day === '' ? '______________' : dayWords(block.day)}`, 'Normal'),
      ];
  }
}

function styled(words: Words, style: string): Paragraph {
  return new Paragraph({ style, children: runs(words) });
}

function runs(words: Words): ParagraphChild[] {
  if (typeof words === 'string') return [new TextRun(clean(words))];
  return words.map((run) => {
    if (typeof run === 'string') return new TextRun(clean(run));
    if ('strong' in run) return new TextRun({ text: clean(run.strong), bold: true });
    if ('em' in run) return new TextRun({ text: clean(run.em), italics: true });
    return /^https?:\/\//.test(run.link)
      ? new ExternalHyperlink({
          link: run.link,
          children: [new TextRun({ text: clean(run.words), style: 'Hyperlink' })],
        })
      : new TextRun(clean(run.words));
  });
}

/** Signs that XML can't hold are left out: a word processor would refuse the whole file. */
function clean(text: string): string {
  return [...text]
    .filter((sign) => {
      const code = sign.codePointAt(0) ?? 0;
      return (
        code === 9 ||
        code === 10 ||
        code === 13 ||
        (code >= 32 && code !== 0xfffe && code !== 0xffff && !(code >= 0xd800 && code <= 0xdfff))
      );
    })
    .join('');
}

function factsTable(rows: Extract<Block, { kind: 'facts' }>['rows']): Table {
  return new Table({
    width: { size: 100, type: WidthType.PERCENTAGE },
    columnWidths: [2000, 7100],
    rows: rows.map(
      ({ name, words }) =>
        new TableRow({ cantSplit: true, children: [cell([[{ strong: name }]], 22), cell(words, 78)] }),
    ),
  });
}

function ledger({ columns, groups }: Extract<Block, { kind: 'table' }>): Table {
  const all = columns.reduce((sum, { share }) => sum + share, 0);
  const percent = columns.map(({ share }) => (100 * share) / all);
  return new Table({
    width: { size: 100, type: WidthType.PERCENTAGE },
    columnWidths: percent.map((each) => Math.round(91 * each)),
    rows: [
      new TableRow({
        tableHeader: true,
        children: columns.map(({ name }, at) => cell([[{ strong: name }]], percent[at] ?? 0)),
      }),
      ...groups.flatMap(({ name, note, rows }) => [
        ...(name === undefined
          ? []
          : [
              new TableRow({
                children: [
                  cell([[{ strong: name }], ...(note === undefined ? [] : [note])], 100, columns.length),
                ],
              }),
            ]),
        ...rows.map(
          (row) =>
            new TableRow({
              cantSplit: true,
              children: row.map((words, at) => cell([words], percent[at] ?? 0)),
            }),
        ),
      ]),
    ],
  });
}

function cell(words: readonly Words[], percent: number, span = 1): TableCell {
  return new TableCell({
    width: { size: percent, type: WidthType.PERCENTAGE },
    columnSpan: span,
    margins: { top: 40, bottom: 40, left: 60, right: 60 },
    children: words.length === 0 ? [styled('', 'Cell')] : words.map((each) => styled(each, 'Cell')),
  });
}

/** A plate with its number, caption and what its marks show; what stands in its place where the picture is not at hand. */
function plateOf(plate: Plate, plates: MarkedPlates, mostWidePx: number, whole: boolean): Paragraph[] {
  const picture = plates.get(plate.sha256);
  const named = `Plate ${plate.number}. `;
  const words = whole
    ? [
        styled([{ strong: named }, plate.caption], 'Note'),
        ...plate.marks.map(({ number, says }) => styled(`${number}. ${says}`, 'Note')),
        ...(plate.origin === '' ? [] : [styled(plate.origin, 'Small')]),
      ]
    : [styled([{ strong: named }], 'Note')];
  if (picture === undefined)
    return [styled(`The picture of this plate is not at hand. ${plate.alternative}`, 'Note'), ...words];
  const width = Math.min(mostWidePx, (560 * picture.widthPx) / picture.heightPx);
  return [
    new Paragraph({
      keepNext: true,
      children: [
        new ImageRun({
          type: 'jpg',
          data: picture.jpeg,
          transformation: { width, height: (width * picture.heightPx) / picture.widthPx },
          altText: { name: named.trim(), title: named.trim(), description: plate.alternative },
        }),
      ],
    }),
    ...words,
  ];
}

/** A drawing of the program as a picture of 200 points to the inch: word processors do not all read the lines themselves. */
async function drawn({ svg, caption, alternative, widthMm, heightMm }: DrawnPicture): Promise<Paragraph[]> {
  const px = (mm: number) => (mm / 25.4) * 96;
  const png = await sharp(Buffer.from(svg), { density: 300 })
    .resize({ width: Math.round((widthMm / 25.4) * 200) })
    .flatten({ background: '#ffffff' })
    .png()
    .toBuffer();
  return [
    new Paragraph({
      keepNext: true,
      children: [
        new ImageRun({
          type: 'png',
          data: png,
          transformation: { width: px(widthMm), height: px(heightMm) },
          altText: { name: caption, title: caption, description: alternative },
        }),
      ],
    }),
    styled(caption, 'Note'),
  ];
}
