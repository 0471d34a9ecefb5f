import { beforeAll, describe, expect, it } from 'vitest';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { makeOpinionPdf } from '../../src/opinion/makeOpinionPdf.ts';
import type { PlateFile } from '../../src/opinion/pdf/scalePlate.ts';
import { type Piece, piece } from '../../src/piece/piece.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';
import { emptyPiece, examplePiece, issueHead, opinionMaker, photoOf } from '../kits/opinions.ts';
import { type ReadPdf, readPdf, withoutSpaces } from '../kits/pdfText.ts';
import { gradient } from '../kits/pictures.ts';

const known: {
  knowledge: Knowledge;
  opinionOn: ReturnType<typeof opinionMaker>;
  chair: Piece;
  plates: PlateFile[];
  pdf: Uint8Array;
  read: ReadPdf;
} = {} as never;

const photos = {
  whole: photoOf('whole', {
    caption: 'The chair from the front',
    alternative: 'A side chair standing on a floor.',
  }),
  splat: photoOf('splat', {
    part: 'splat',
    widthPx: 200,
    heightPx: 320,
    marks: [
      {
        id: 'm',
        number: 1,
        kind: 'outline',
        points: [
          [0.2, 0.2],
          [0.6, 0.2],
          [0.6, 0.8],
        ],
        words: 'Saw lines',
      },
      {
        id: 'n',
        number: 2,
        kind: 'line',
        points: [
          [0, 0],
          [1, 1],
        ],
        words: '',
      },
      { id: 'o', number: 3, kind: 'point', points: [[1, 1]], words: 'At the very edge' },
    ],
  }),
};

beforeAll(async () => {
  known.knowledge = await houseKnowledge();
  known.opinionOn = opinionMaker(known.knowledge);
  known.chair = { ...(await examplePiece('side-chair')), photos, plateOrder: ['whole', 'splat'] };
  known.plates = [
    { id: 'whole', mediaType: 'image/jpeg', bytes: await gradient().jpeg().toBuffer() },
    { id: 'splat', mediaType: 'image/png', bytes: await gradient(200, 320).png().toBuffer() },
  ];
  known.pdf = await makeOpinionPdf({
    document: known.opinionOn(known.chair),
    plates: known.plates,
  });
  known.read = readPdf(known.pdf);
}, 120_000);

const allText = (read: ReadPdf) => withoutSpaces(read.pages.join('\n'));
const allObjects = (read: ReadPdf) => [...read.objects.values()].join('\n');

async function pdfOn(of: Piece, plates: PlateFile[] = []): Promise<ReadPdf> {
  return readPdf(await makeOpinionPdf({ document: known.opinionOn(of), plates }));
}

describe('the PDF can be read by anyone', () => {
  it('is tagged, in a language, with a title, and says that it keeps to PDF/UA-1', () => {
    const objects = allObjects(known.read);
    expect(objects).toContain('/StructTreeRoot');
    expect(objects).toMatch(/\/MarkInfo\s*<<[^>]*\/Marked true/);
    expect(objects).toMatch(/\/Lang \(en-US\)/);
    expect(Buffer.from(known.pdf).toString('latin1')).toMatch(/pdfuaid:part>1</);
    expect(objects).toMatch(/\/DisplayDocTitle true/);
  });

  it('has words for every picture', () => {
    const figures = [...known.read.objects.values()].filter((one) => /\/S \/Figure/.test(one));
    expect(figures.length).toBeGreaterThanOrEqual(4);
    for (const figure of figures) expect(figure).toMatch(/\/Alt /);
  });

  it('has tables with header cells, headings and lists', () => {
    const objects = allObjects(known.read);
    for (const tag of ['/S /TH', '/S /H1', '/S /H2', '/S /LI', '/S /Caption']) expect(objects).toContain(tag);
  });
});

describe('draft and signed', () => {
  it('says DRAFT on every page of a draft, across it and in its head', () => {
    expect(known.read.pages.length).toBeGreaterThan(5);
    for (const page of known.read.pages) expect(page.match(/DRAFT/g)?.length).toBeGreaterThanOrEqual(2);
  });

  it('says it nowhere once signed', async () => {
    const document = known.opinionOn(known.chair, issueHead());
    const signed = readPdf(await makeOpinionPdf({ document, plates: [] }));
    for (const page of signed.pages) {
      expect(page).not.toContain('DRAFT');
      expect(withoutSpaces(page)).toContain('revision1·record0b54f1c2,212acts,head1f1f1f1f1f1f');
    }
    expect(allText(signed)).toContain('signedbyPerrinHallowayon20November2026');
  });

  it('numbers its pages, each of so many', () => {
    const { pages } = known.read;
    for (const [index, page] of pages.entries())
      expect(page).toContain(`page ${index + 1} of ${pages.length}`);
  });
});

describe('what a person entered', () => {
  it('is printed as it stands, commands and all', async () => {
    const words = 'Told: "#read(\\"x\\")" *not bold* $5 [a] <b> @c // 37⅛ in, ⅜ and 5 × 7';
    const read = await pdfOn({ ...known.chair, opinion: { ...known.chair.opinion, conclusion: words } });
    expect(allText(read)).toContain(withoutSpaces(words));
  });

  it('is printed by code point where no font has the sign', async () => {
    const read = await pdfOn(emptyPiece({ title: 'A chair \u{0378} with an unknown sign' }));
    expect(allText(read)).toContain('[U+0378]');
  });

  it('may be very long', async () => {
    const long = 'The grain runs out above the cuff and comes in below it. '.repeat(120);
    const of = piece.parse({
      ...known.chair,
      findings: { x: { id: 'x', sign: 'saw-lines-band', part: 'splat', state: 'present', words: long } },
    });
    const text = allText(await pdfOn(of));
    expect(text.split(withoutSpaces('The grain runs out above the cuff')).length - 1).toBe(120);
  });
});

describe('plates', () => {
  it('prints captions and what the marks show', () => {
    const text = allText(known.read);
    for (const words of ['Plate1.Thechairfromthefront.', 'Plate2.', 'Sawlines.', 'Attheveryedge.'])
      expect(text).toContain(words);
  });

  it('puts a sentence in the place of a picture that is missing or broken', async () => {
    const broken: PlateFile[] = [
      { id: 'whole', mediaType: 'image/jpeg', path: '/underside-opinion-has-no-folder/x.jpg' },
      { id: 'splat', mediaType: 'image/jpeg', bytes: Buffer.from('this is no picture') },
    ];
    const text = allText(await pdfOn(known.chair, broken));
    expect(text.split('Thepictureofthisplateisnotathand').length - 1).toBe(2);
    expect(text).toContain('Attheveryedge.');
  });

  it('tells how far it is, and ends at the end', async () => {
    const steps: [string, number, number][] = [];
    await makeOpinionPdf({ document: known.opinionOn(known.chair), plates: known.plates }, (...step) =>
      steps.push(step),
    );
    expect(steps.filter(([step]) => step === 'Scaling the plates')).toHaveLength(2);
    const last = steps.at(-1);
    expect(last?.[1]).toBe(last?.[2]);
  });
});

describe('the same again', () => {
  it('gives the same bytes from the same input, dated by the day handed in and by no clock', async () => {
    const again = await makeOpinionPdf({
      document: known.opinionOn(known.chair),
      plates: known.plates,
    });
    expect(Buffer.compare(again, known.pdf)).toBe(0);
    const dates = allObjects(known.read).match(/\(D:\d{8}/g) ?? [];
    expect(dates.length).toBeGreaterThan(0);
    for (const date of dates) expect(date).toBe('(D:20261125');
  });

  it('fits both papers', async () => {
    const document = known.opinionOn(known.chair);
    const letter = readPdf(await makeOpinionPdf({ document, plates: known.plates, paper: 'us-letter' }));
    expect(allObjects(letter)).toMatch(/\/MediaBox \[0 0 612 792\]/);
    expect(allObjects(known.read)).toMatch(/\/MediaBox \[0 0 595\.\d+ 841\.\d+\]/);
  });
});

it('makes a decent short draft of a piece with nothing entered', async () => {
  const read = await pdfOn(emptyPiece());
  expect(read.pages.length).toBeLessThanOrEqual(6);
  expect(allText(read)).toContain('Theexaminerhasnotwrittenaconclusionyet.');
});
