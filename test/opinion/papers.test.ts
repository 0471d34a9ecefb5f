import { readFile } from 'node:fs/promises';
import { convertToHtml } from 'mammoth';
import { beforeAll, describe, expect, it } from 'vitest';
import { paperKinds } from '../../src/engagement/papers.ts';
import type { OpinionDocument } from '../../src/opinion/opinionDocument.ts';
import { namesOf } from '../../src/opinion/papers/withoutNames.ts';
import { purpose } from '../../src/piece/engagement.ts';
import { piece } from '../../src/piece/piece.ts';
import { emptyPiece, textOf, textsOf } from '../kits/opinions.ts';
import { examplePapers, type Papers } from '../kits/papers.ts';
import { readPdf } from '../kits/pdfText.ts';

const known: { papers: Papers } = {} as never;
beforeAll(async () => {
  known.papers = await examplePapers();
}, 60_000);

const section = (document: OpinionDocument, id: string) =>
  textsOf(document.sections.find((each) => each.id === id)).join('\n');

describe('each paper', () => {
  it('says nothing from memory and names no unread rule, whatever the intended use', () => {
    const { documentOf, piece: of } = known.papers;
    for (const paper of paperKinds)
      for (const use of purpose.options) {
        const text = textOf(documentOf(paper, { ...of, engagement: { ...of.engagement, purpose: use } }));
        expect(text, `${paper} for ${use}`).not.toMatch(/from memory|1539\(h\)|was not read/i);
      }
  });

  it('holds of an empty piece, too', () => {
    for (const paper of paperKinds)
      expect(known.papers.documentOf(paper, emptyPiece()).sections.length).toBeGreaterThan(0);
  });
});

describe('the letter and the restricted report', () => {
  it('the letter stands on one page, with conclusion, reasons, limits and signature', async () => {
    expect(readPdf(await known.papers.bytesOf('letter', 'pdf')).pages).toHaveLength(1);
    const text = textOf(known.papers.documentOf('letter'));
    const { conclusion, reasons, limits } = known.papers.piece.opinion;
    for (const words of [conclusion, reasons, limits]) expect(text).toContain(words.trim().slice(0, 60));
    expect(known.papers.documentOf('letter').sections.at(-1)?.blocks.at(-1)).toMatchObject({
      kind: 'signature',
    });
  });

  it('the restricted report names who may use it and tells no finding', () => {
    const document = known.papers.documentOf('restricted');
    const text = textOf(document);
    expect(section(document, 'restricted')).toContain('for no one else');
    expect(text).toContain(known.papers.piece.engagement.mayRely);
    expect(text).toContain(known.papers.piece.engagement.answers.policy);
    expect(document.sections.map(({ id }) => id)).not.toContain('findings');
  });
});

describe('the condition report', () => {
  it('numbers damage alike on the drawing and in the table, and names the plates', () => {
    const document = known.papers.documentOf('condition');
    const blocks = document.sections.find(({ id }) => id === 'damage')?.blocks ?? [];
    const front = blocks
      .flatMap((block) => (block.kind === 'pictures' ? block.pictures : []))
      .find(({ id }) => id === 'damage-front');
    expect(front?.alternative).toMatch(/crest rail 1 and 3/i);
    expect(front?.svg).toContain('>1 3</text>');
    expect(front?.svg).toContain('>2</text>');
    const rows = blocks.flatMap((block) =>
      block.kind === 'table' ? block.groups.flatMap(({ rows }) => rows) : [],
    );
    expect(rows.map(([number, part, what]) => [number, part, what])).toEqual([
      ['1', 'Crest rail', 'Split'],
      ['2', 'Front seat rail', 'Failed glue line; it goes on'],
      ['3', 'Crest rail', 'Bloom'],
    ]);
    expect(rows[0]?.at(-1)).toBe('2');
  });

  it('prints one word for the whole only beside the examiner’s own, and what is blank as not stated', () => {
    const { documentOf, piece: of } = known.papers;
    expect(section(documentOf('condition'), 'condition')).toContain('Fair, as told below');
    const bare = documentOf('condition', { ...of, condition: { ...of.condition, words: '' } });
    expect(section(bare, 'condition')).not.toContain('Fair');
    expect(section(bare, 'condition')).toMatch(/Not stated: .*state/);
    const none = documentOf('condition', { ...of, damages: {} });
    expect(section(none, 'damage')).toContain('does not say that there is none');
  });
});

it('the page for the client has no word of the sums, and says how sure the conclusion itself is', () => {
  const { documentOf, piece: of } = known.papers;
  expect(textOf(documentOf('client'))).not.toMatch(/deciban|likelihood|posterior|\bodds\b|dendro/i);
  const other = documentOf('client', { ...of, opinion: { ...of.opinion, reading: 'period-intact' } });
  expect(section(documentOf('client'), 'sure')).toMatch(/99\d in 1000 would be a later copy made by machine/);
  expect(section(other, 'sure')).not.toMatch(/99\d in 1000 would be a period piece/);
  expect(section(other, 'sure')).toMatch(/What else it could be: a later copy made by machine/);
});

it('the Object ID sheet has every category of the published list, and says which are not recorded', async () => {
  const published = JSON.parse(
    await readFile(new URL('../reference/objectIdCategories.json', import.meta.url), 'utf8'),
  );
  const { objectIdCategories } = await import('../../src/opinion/papers/objectId.ts');
  const { materialOf } = await import('../../src/opinion/opinionMaterial.ts');
  const { houseKnowledge } = await import('../kits/houseKnowledge.ts');
  const input = { knowledge: await houseKnowledge(), drawing: [], madeOn: '2026-11-25', version: 'test' };
  const of = objectIdCategories(materialOf({ ...input, piece: known.papers.piece }));
  expect(of.map(({ id }) => id)).toEqual([...published.categories, ...published.recommended]);
  const filled = of.filter(({ words }) => words.length > 0).map(({ id }) => id);
  expect(filled).toEqual(
    expect.arrayContaining([
      'photographs',
      'type',
      'measurements',
      'materials',
      'date',
      'features',
      'description',
    ]),
  );
  const empty = textOf(known.papers.documentOf('object-id', piece.parse({ id: 'x', form: 'side-chair' })));
  expect(empty.match(/not recorded/g)?.length).toBeGreaterThanOrEqual(8);
  expect(textOf(known.papers.documentOf('object-id')).split('Distinguishing features')[1]).toContain(
    'Split, crest rail',
  );
});

describe('the teaching handout', () => {
  it('has no name of the job in it, in whatever form', async () => {
    const names = namesOf(known.papers.piece);
    expect(names).toEqual(expect.arrayContaining(['Oldacre', 'Quillmere', 'Tamsin', 'Halloway']));
    expect(textOf(known.papers.documentOf('full'))).toContain('Oldacre');
    const html = Buffer.from(await known.papers.bytesOf('lesson', 'html')).toString('utf8');
    const pdf = readPdf(await known.papers.bytesOf('lesson', 'pdf'));
    const told = [
      textOf(known.papers.documentOf('lesson')),
      html,
      pdf.pages.join('\n'),
      [...pdf.objects.values()].join('\n'),
    ];
    for (const name of ['Oldacre', 'Quillmere', 'Tamsin', 'Halloway', 'Perrin'])
      for (const text of told) expect(text).not.toContain(name);
  });

  it('gives nothing away before the answer, which tells all of it', () => {
    const document = known.papers.documentOf('lesson');
    const answer = document.sections.findIndex((each) => each.answer === true);
    expect(answer).toBe(document.sections.length - 1);
    const before = textsOf(document.sections.slice(0, answer)).join('\n');
    const found = Object.values(known.papers.piece.findings)
      .map(({ words }) => words)
      .filter((words) => words.length > 20);
    for (const words of [...found, known.papers.piece.opinion.conclusion, 'A split along the grain'])
      expect(before).not.toContain(words);
    expect(before).not.toMatch(/machine copy|made by machine|^(Present|Absent)[.,]/m);
    expect(textsOf(document.sections[answer]).join('\n')).toMatch(
      /A later copy, made by machine[\s\S]*A split along the grain/,
    );
  });

  it('as a page stands alone: no script, nothing fetched, the answer folded', async () => {
    const html = Buffer.from(await known.papers.bytesOf('lesson', 'html')).toString('utf8');
    expect(html).not.toMatch(/<script|<link|@import|url\(|(?:src|href)="(?!data:)/i);
    expect(html.match(/<img [^>]*src="data:image\/jpeg;base64,/g)).toHaveLength(2);
    expect(html).toMatch(/<details><summary>Show the answer<\/summary><h2>The answer/);
  });
});

describe('as DOCX', () => {
  it('an independent reader finds the headings of the PDF in their order, its tables, its pictures with their words', async () => {
    const document = known.papers.documentOf('condition');
    const bytes = Buffer.from(await known.papers.bytesOf('condition', 'docx'));
    const { value: html, messages } = await convertToHtml({ buffer: bytes });
    expect(messages.filter(({ type }) => type === 'error')).toEqual([]);
    expect(
      [...html.matchAll(/<h1>(?:<a[^>]*><\/a>)?(.*?)<\/h1>/g)]
        .map((found) => found[1])
        .slice(-document.sections.length),
    ).toEqual(document.sections.map(({ title }) => title));
    const tables = document.sections
      .flatMap(({ blocks }) => blocks)
      .filter(({ kind }) => kind === 'table' || kind === 'facts');
    expect(html.match(/<table>/g)).toHaveLength(tables.length + 1);
    const pictures = [...html.matchAll(/<img alt="([^"]*)"/g)].map((found) => found[1]);
    expect(pictures.filter((alt) => alt?.startsWith('Photograph of')).length).toBeGreaterThanOrEqual(2);
    expect(pictures.join()).toContain('Numbered by damage: ');
    for (const words of ['right ear, from behind', 'Failed glue line; it goes on', 'Not to be sat on.'])
      expect(html).toContain(words);
  });

  it('keeps signs that markup is made of, and leaves out those that no XML can hold', async () => {
    const { documentDocx } = await import('../../src/opinion/docx/documentDocx.ts');
    const document = { ...known.papers.documentOf('letter'), title: 'A <chair> & "more"\u0000\u0007 end' };
    const { value } = await convertToHtml({ buffer: Buffer.from(await documentDocx(document, new Map())) });
    expect(value).toContain('A &lt;chair&gt; &amp; "more" end');
  });
});
