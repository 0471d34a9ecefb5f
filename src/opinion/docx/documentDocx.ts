import {
  AlignmentType,
  Document,
  Footer,
  Header,
  HeadingLevel,
  Packer,
  PageNumber,
  Paragraph,
  type ParagraphChild,
  TextRun,
} from 'docx';
import { dayWords } from '../../units/days.ts';
import type { OpinionDocument } from '../opinionDocument.ts';
import type { MarkedPlates } from '../pdf/markedPlate.ts';
import { docxBlock } from './docxBlock.ts';

/**
 * A paper as DOCX, for those who must edit it: the same words in the same order as the PDF, with headings, tables and pictures of their own
 * kind. What is edited is no longer what was signed, and its foot says that it is a copy to edit.
 *
 * @param plates  pictures by their SHA-256, with their marks drawn in
 */
export async function documentDocx(document: OpinionDocument, plates: MarkedPlates): Promise<Uint8Array> {
  const { title, above, line, author, draft, madeOn, example, head, sections } = document;
  const foot = [
    author,
    dayWords(madeOn),
    'a copy to edit, not the signed paper',
    example ? 'an invented example' : '',
  ]
    .filter((each) => each !== '')
    .join(' · ');
  const body = [
    new Paragraph({ style: 'Above', children: [new TextRun(draft ? `${above} · draft` : above)] }),
    new Paragraph({ heading: HeadingLevel.TITLE, children: [new TextRun(title)] }),
    ...(line === '' ? [] : [new Paragraph({ style: 'Under', children: [new TextRun(line)] })]),
  ];
  for (const block of head) body.push(...((await docxBlock(block, plates)) as Paragraph[]));
  for (const { title: name, blocks, apart, answer } of sections) {
    body.push(
      new Paragraph({
        heading: HeadingLevel.HEADING_1,
        pageBreakBefore: apart === true || answer === true,
        children: [new TextRun(name)],
      }),
    );
    for (const block of blocks) body.push(...((await docxBlock(block, plates)) as Paragraph[]));
  }
  const packed = new Document({
    title,
    creator: author,
    description: above,
    // No clock is read: the day is the document's own.
    styles: docxStyles,
    sections: [
      {
        properties: { page: { margin: { top: 1300, bottom: 1200, left: 1250, right: 1250 } } },
        headers: { default: new Header({ children: [small([new TextRun(draft ? 'DRAFT' : '')])] }) },
        footers: {
          default: new Footer({
            children: [
              small([
                new TextRun(`${foot} · page `),
                new TextRun({ children: [PageNumber.CURRENT, ' of ', PageNumber.TOTAL_PAGES] }),
              ]),
            ],
          }),
        },
        children: body,
      },
    ],
  });
  return new Uint8Array(await Packer.toBuffer(packed));
}

function small(children: ParagraphChild[]): Paragraph {
  return new Paragraph({ style: 'Small', alignment: AlignmentType.LEFT, children });
}

const ink = '2B2622';
const soft = '655B51';
const walnut = '7A4A2B';

/** Faces that every word processor has; sizes in half points. */
const docxStyles = {
  default: {
    document: {
      run: { font: 'Georgia', size: 21, color: ink },
      paragraph: { spacing: { after: 120, line: 276 } },
    },
    title: {
      run: { font: 'Georgia', size: 46, bold: true, color: ink },
      paragraph: { spacing: { after: 80 } },
    },
    heading1: {
      run: { font: 'Georgia', size: 30, bold: true, color: ink },
      paragraph: { spacing: { before: 360, after: 120 }, keepNext: true },
    },
    heading2: {
      run: { font: 'Arial', size: 20, bold: true, color: walnut },
      paragraph: { spacing: { before: 240, after: 80 }, keepNext: true },
    },
  },
  paragraphStyles: [
    {
      id: 'Above',
      name: 'Above the title',
      basedOn: 'Normal',
      run: { font: 'Arial', size: 18, bold: true, color: walnut },
    },
    {
      id: 'Under',
      name: 'Under the title',
      basedOn: 'Normal',
      run: { italics: true, size: 25, color: soft },
    },
    { id: 'Lead', name: 'Lead', basedOn: 'Normal', run: { size: 25 } },
    { id: 'Note', name: 'Note', basedOn: 'Normal', run: { font: 'Arial', size: 18, color: soft } },
    { id: 'Own', name: 'Own words', basedOn: 'Normal', paragraph: { indent: { left: 240 } } },
    { id: 'Small', name: 'Small', basedOn: 'Normal', run: { font: 'Arial', size: 16, color: soft } },
    {
      id: 'Cell',
      name: 'Cell',
      basedOn: 'Normal',
      run: { font: 'Arial', size: 18 },
      paragraph: { spacing: { after: 20 } },
    },
  ],
};
