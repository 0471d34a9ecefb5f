import { beforeAll, describe, expect, it } from 'vitest';
import { publishedRatios } from '../../src/calibration/publishedRatios.ts';
import { figureNumbers } from '../../src/knowledge/figuresOf.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { type OpinionDocument, platesOf, type Section } from '../../src/opinion/opinionDocument.ts';
import { stateWords } from '../../src/opinion/wording.ts';
import { type Piece, piece } from '../../src/piece/piece.ts';
import { platesOf as numbersOf } from '../../src/piece/plates.ts';
import { demonstratedWords } from '../../src/weighing/demonstratedWords.ts';
import { verbalScale } from '../../src/weighing/verbalScale.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';
import {
  emptyPiece,
  examplePiece,
  issueHead,
  opinionMaker,
  photoOf,
  textOf,
  textsOf,
} from '../kits/opinions.ts';

const known: {
  knowledge: Knowledge;
  opinionOn: ReturnType<typeof opinionMaker>;
  chair: Piece;
  opinion: OpinionDocument;
} = {} as never;

beforeAll(async () => {
  known.knowledge = await houseKnowledge();
  known.opinionOn = opinionMaker(known.knowledge);
  known.chair = await examplePiece('side-chair');
  known.opinion = known.opinionOn(known.chair);
}, 60_000);

function section(document: OpinionDocument, id: string): Section {
  const found = document.sections.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no section ${id}`);
  return found;
}

function rowsOf(of: Section): string[][] {
  return of.blocks.flatMap((block) =>
    block.kind === 'table'
      ? block.groups.flatMap((group) => group.rows.map((row) => row.map((cell) => textsOf(cell).join(''))))
      : [],
  );
}

function withOpinion(of: Piece, opinion: Partial<Piece['opinion']>): Piece {
  return { ...of, opinion: { ...of.opinion, ...opinion } };
}

describe('what an opinion holds', () => {
  it('says what a doubt covers in each section that tells one, and in no other', () => {
    const covers = '“Give or take” and ± cover about 95 in 100.';
    const [first] = Object.values(known.chair.measures);
    const [found] = Object.values(known.chair.findings);
    if (first === undefined || found === undefined) throw new Error('the example was measured');
    const doubtful = known.opinionOn({
      ...known.chair,
      measures: { [first.id]: { ...first, sigmaMm: 2 } },
      findings: { [found.id]: { ...found, words: 'The pitch is 3 mm, give or take 0.2 mm.' } },
    });
    const sure = known.opinionOn({
      ...known.chair,
      measures: { [first.id]: { ...first, sigmaMm: 0, words: '' } },
      findings: { [found.id]: { ...found, words: '' } },
    });
    const covered = (of: OpinionDocument) =>
      of.sections.filter((each) => textsOf(each).join('\n').includes(covers)).map(({ id }) => id);
    expect(covered(doubtful)).toEqual(['description', 'findings']);
    expect(textsOf(section(doubtful, 'description')).join('\n')).toContain('± 4 mm');
    expect(covered(sure)).toEqual([]);
  });

  it('has first what is read, then the appendices', () => {
    expect(known.opinion.sections.map((each) => each.id)).toEqual([
      'opinion',
      'reasons',
      'description',
      'parts',
      'for-this-use',
      'limits',
      'cautions',
      'signature',
      'plates',
      'engagement',
      'findings',
      'weights',
      'contradictions',
      'readings',
      'years',
      'law',
      'period-against-later',
      'figures',
      'sources',
      'made-with',
    ]);
    const appendices = known.opinion.sections.filter(({ appendix }) => appendix === true);
    expect(known.opinion.sections.slice(-appendices.length)).toEqual(appendices);
    expect(appendices[0]?.id).toBe('plates');
    expect(appendices.map(({ title }) => /^Appendix (\w): /.exec(title)?.[1]).join('')).toBe('ABCDEFGHIJKL');
    // Where the appendices begin they are told by name, all of them.
    expect(section(known.opinion, 'signature').blocks.at(-1)).toEqual({
      kind: 'list',
      items: appendices.map(({ title }) => title),
    });
  });

  it('has on its first page the plate that stands first, what is concluded, how sure it is, and who signed', () => {
    const photos = { p: photoOf('p'), q: photoOf('q') };
    const of = known.opinionOn({ ...known.chair, photos, plateOrder: ['q', 'p'] });
    expect(of.head[0]).toMatchObject({ kind: 'front', plate: { number: 1, photoId: 'q' } });
    const text = textsOf(section(of, 'opinion')).join('\n');
    expect(text).toContain('How sure\nBy the weighing of the findings. ');
    expect(text).toContain('not signed: a draft');
    expect(section(of, 'reasons').blocks).toContainEqual(
      expect.objectContaining({ kind: 'strip', plates: [expect.objectContaining({ number: 2 })] }),
    );
    expect(known.opinionOn({ ...known.chair, photos: {} }).head[0]).toMatchObject({ kind: 'facts' });
  });

  it('warns of upholstery and of lifting by what the piece is', () => {
    const text = (of: OpinionDocument) => textsOf(section(of, 'cautions')).join('\n');
    expect(text(known.opinion)).toContain('Lift a chair by its seat rails');
    const chest = known.opinionOn(emptyPiece({ form: 'chest-of-drawers' }));
    expect(text(chest)).not.toContain('Lift a chair by its seat rails');
    expect(text(chest)).not.toContain('never push a bare hand behind a seat');
    expect(text(chest)).toContain('lift by the frame');
  });

  it('prints every finding once, with what was found and the examiner’s words', () => {
    const rows = rowsOf(section(known.opinion, 'findings')).filter(
      ([, words]) => !words?.includes('(Examiner’s own.)'),
    );
    const findings = Object.values(known.chair.findings);
    expect(rows).toHaveLength(findings.length);
    for (const finding of findings) {
      const name = known.knowledge.signs[finding.sign]?.name ?? '';
      const state = stateWords[finding.state];
      expect(
        rows.some(
          ([sign, found, words]) =>
            sign === name && found?.startsWith(state) && words?.includes(finding.words),
        ),
      ).toBe(true);
    }
  });

  it('prints each size in inches and millimeters', () => {
    const of = piece.parse({
      ...known.chair,
      measures: { height: { id: 'height', mm: 942.975, asEntered: '37 1/8' } },
    });
    const row = rowsOf(section(known.opinionOn(of), 'description'))[0];
    expect(row?.[1]).toBe('37 1/8 in');
    expect(row?.[2]).toBe('943 mm');
  });

  it('prints every band of the scale, where it comes from, and that it was not verified', () => {
    const weights = section(known.opinion, 'weights');
    const text = textsOf(weights).join('\n');
    for (const band of verbalScale.bands) expect(text).toContain(band.words);
    expect(text).toContain(verbalScale.standing);
    expect(verbalScale.standing).toContain('not verified');
  });

  it('says how far likelihood ratios have been shown to hold, as it is reckoned from the published cases', () => {
    expect(textsOf(section(known.opinion, 'weights')).join('\n')).toContain(demonstratedWords());
    expect(demonstratedWords()).toContain(
      `${publishedRatios.period.length + publishedRatios.later.length} pieces`,
    );
  });

  it('says that a likelihood ratio is not a probability, and whose the starting odds are', () => {
    expect(textOf(known.opinion)).toContain('A likelihood ratio is not the probability of either side.');
    expect(textsOf(section(known.opinion, 'readings')).join('\n')).toContain('the examiner’s choice');
  });

  it('prints the figures of every sign as the knowledge has them', () => {
    const figures = section(known.opinion, 'figures').blocks.flatMap((block) =>
      block.kind === 'table' && block.caption.includes('each sign') ? block.groups : [],
    );
    const signs = new Set(Object.values(known.chair.findings).map((each) => each.sign));
    expect(figures).toHaveLength(signs.size);
    for (const id of signs) {
      const sign = known.knowledge.signs[id];
      const group = figures.find((each) => each.name?.startsWith(`${sign?.name} – `));
      for (const figure of Object.values(sign?.shows ?? {})) {
        const { best, low, high } = figureNumbers(figure);
        expect(group?.rows.some((row) => row[1] === `${best}` && row[2] === `${low} – ${high}`)).toBe(true);
      }
    }
  });

  it('cites each work once, and says how far it was read', () => {
    const items = section(known.opinion, 'sources').blocks.flatMap((block) =>
      block.kind === 'list' ? block.items : [],
    );
    const texts = items.map((item) => textsOf(item).join(''));
    expect(new Set(texts).size).toBe(texts.length);
    for (const text of texts) expect(text).toMatch(/Read in part|Read whole|Not read/);
  });

  it('leaves out how those who tend the knowledge came by their sources', () => {
    const works = Object.values(known.knowledge.sources);
    expect(works.some((work) => /leaned on for/i.test(work.note ?? ''))).toBe(true);
    expect(textOf(known.opinion)).not.toMatch(/from memory|leaned on|\d characters|host omitted|who mapped/i);
  });

  it('says with which versions and seed it was made', () => {
    const text = textsOf(section(known.opinion, 'made-with')).join('\n');
    expect(text).toContain('0.0.0-test');
    expect(text).toContain(known.knowledge.version);
    expect(text).toContain('from seed 1');
  });

  it('is the same again from the same piece', () => {
    expect(known.opinionOn(known.chair)).toEqual(known.opinion);
  });
});

it('prints what was measured at the bench: entered findings as weighed, the rest as kept, each once with its source', () => {
  const says = 'That is 9.0 times as probable of old work as of recent.';
  const measured = {
    calculation: 'wood.roundness',
    input: {},
    output: {},
    says,
  };
  const likelihoods = { natural: 9, none: 1, imitated: 1 };
  const chair = piece.parse({
    ...known.chair,
    findings: {
      'turning-out-of-round@front-leg-left': {
        id: 'turning-out-of-round@front-leg-left',
        sign: 'turning-out-of-round',
        part: 'front-leg-left',
        state: 'present',
        measured: { ...measured, likelihoods },
      },
    },
    bench: {
      a: { id: 'a', title: 'left leg', ...measured },
      b: {
        id: 'b',
        calculation: 'wood.movement',
        title: 'splat',
        input: {},
        output: {},
        says: 'It shrinks.',
      },
    },
  });
  const document = known.opinionOn(chair);
  const rows = rowsOf(section(document, 'bench'));
  expect(textsOf(section(document, 'bench')).join(' ')).toContain('a later piece can have aged too');
  expect(rows).toHaveLength(2);
  expect(rows[0]?.join(' ')).toContain(says);
  expect(rows[0]?.join(' ')).toContain('Entered as a finding');
  expect(rows[1]?.join(' ')).toContain('Kept for the record; not weighed.');
  expect(rowsOf(section(document, 'findings'))[0]?.[1]).toContain('measured');
  expect(known.opinion.sections.some((each) => each.id === 'bench')).toBe(false);
});

describe('the examiner and the weighing', () => {
  it('prints both where they differ, and the reason', () => {
    const of = withOpinion(known.chair, { reading: 'period-intact', departure: 'I know its five sisters.' });
    const text = textsOf(section(known.opinionOn(of), 'reasons')).join('\n');
    expect(text).toContain('The examiner departs from the weighing');
    expect(text).toContain('a later copy made by machine');
    expect(text).toContain('a period piece, substantially intact');
    expect(text).toContain('I know its five sisters.');
  });

  it('says so where no reason was written', () => {
    const of = withOpinion(known.chair, { reading: 'made-to-deceive', departure: '  ' });
    expect(textOf(known.opinionOn(of))).toContain('No reason for it has been written.');
  });

  it('prints how each contradiction was settled, and leaves open what is open', async () => {
    const armchair = await examplePiece('armchair');
    const settled = textsOf(section(known.opinionOn(armchair), 'contradictions')).join('\n');
    for (const words of Object.values(armchair.opinion.resolutions)) expect(settled).toContain(words);
    const open = withOpinion(armchair, { resolutions: {} });
    expect(textsOf(section(known.opinionOn(open), 'contradictions')).join('\n')).toContain(
      'Left open by the examiner.',
    );
  });
});

describe('what must be known before reading on', () => {
  const notices = (document: OpinionDocument) =>
    document.head.flatMap((block) => (block.kind === 'notice' ? [block.title] : []));

  it('says that an example is invented, and that a draft is one', () => {
    expect(notices(known.opinion)).toEqual(['An invented example', 'Draft']);
  });

  it('is quiet once a real piece is signed', () => {
    const document = known.opinionOn({ ...known.chair, example: false }, issueHead());
    expect(notices(document)).toEqual([]);
    expect(document.draft).toBe(false);
    expect(textOf(document)).toContain('revision 1, signed by Perrin Halloway on 20 November 2026');
  });

  it('prints the record, its head and count, and the hash of what it rests on, in a signed opinion only', () => {
    const issue = issueHead();
    const document = known.opinionOn(known.chair, issue);
    const text = textsOf(section(document, 'made-with')).join('\n');
    const grouped = (pair: string) => Array(4).fill(pair.repeat(8)).join(' ');
    for (const words of [issue.recordId, grouped('1f'), grouped('2e'), '212']) expect(text).toContain(words);
    expect(document.issued).toBe('revision 1 · record 0b54f1c2, 212 acts, head 1f1f1f1f1f1f');
    expect(textOf(known.opinion)).not.toContain('Head of the record');
  });

  it('says what a revision takes the place of, what is new in it and why', () => {
    const issue = issueHead({
      revision: 2,
      isNew: 'The blocks are glued anew.',
      why: 'The seat could be lifted at last.',
      before: { revision: 1, on: '2026-10-02' },
    });
    const text = textOf(known.opinionOn(known.chair, issue));
    expect(text).toContain('takes the place of revision 1 of 2 October 2026');
    expect(text).toContain('The blocks are glued anew.');
    expect(text).toContain('The seat could be lifted at last.');
  });

  it('does not pass off as signed what was signed before revisions were kept', () => {
    const signed = withOpinion(known.chair, {
      status: 'signed',
      signedBy: 'P. Halloway',
      signedOn: '2026-11-20',
    });
    const document = known.opinionOn(signed);
    expect(document.draft).toBe(true);
    expect(textOf(document)).toContain(
      'Signed by P. Halloway on 20 November 2026, before revisions were kept',
    );
  });

  it('says that a piece was seen in photographs only', () => {
    const document = known.opinionOn({ ...known.chair, mode: 'photo-only' });
    expect(notices(document)).toContain('From photographs only');
    expect(textsOf(section(document, 'limits')).join('\n')).toContain('in photographs only');
  });
});

describe('a piece of which little is known', () => {
  it('makes a short draft when nothing is entered', () => {
    const document = known.opinionOn(emptyPiece());
    expect(document.sections.map((each) => each.id)).not.toContain('weights');
    const text = textOf(document);
    expect(text).toContain('has not written a conclusion yet');
    expect(text).toContain('Nothing has been recorded yet.');
    expect(text).toContain('Not stated: client,');
    expect(text).toContain('No dimensions have been entered.');
  });

  it('says that a form is not known', () => {
    expect(textOf(known.opinionOn(emptyPiece({ form: 'throne' })))).toContain('no form “throne”');
  });

  it('names a sign that the knowledge no longer has by its id', () => {
    const of = piece.parse({
      ...emptyPiece(),
      findings: { 'odd-old-sign': { id: 'odd-old-sign', sign: 'odd-old-sign', state: 'present' } },
    });
    expect(textOf(known.opinionOn(of))).toContain('Odd old sign');
  });
});

describe('the plates', () => {
  const photos = {
    a: photoOf('a', { caption: 'The back' }),
    b: photoOf('b', { alternative: 'A dovetail seen from above.' }),
    c: photoOf('c', { asPlate: false }),
    d: photoOf('d', {
      part: 'splat',
      marks: [
        {
          id: 'n',
          number: 2,
          kind: 'point',
          points: [[0.5, 0.5]],
          words: '',
          finding: 'saw-lines-band@splat',
        },
        { id: 'm', number: 1, kind: 'point', points: [[0.1, 0.1]], words: 'A worn edge' },
      ],
    }),
  };

  it('are numbered in the examiner’s order, the rest after, those not to print left out and counted', () => {
    const document = known.opinionOn({ ...known.chair, photos, plateOrder: ['d', 'c', 'gone', 'a'] });
    expect(platesOf(document).map((plate) => [plate.number, plate.photoId])).toEqual([
      [1, 'd'],
      [2, 'a'],
      [3, 'b'],
    ]);
    const onScreen = numbersOf({ photos, plateOrder: ['d', 'c', 'gone', 'a'] });
    expect(onScreen.flatMap(({ photo, plate }) => (plate === undefined ? [] : [[plate, photo.id]]))).toEqual(
      platesOf(document).map((plate) => [plate.number, plate.photoId]),
    );
    expect(textOf(document)).toContain('1 further photograph is kept with the record and not printed.');
  });

  it('say under the drawing whose left and right are meant', () => {
    expect(textsOf(section(known.opinion, 'parts')).join('\n')).toContain(
      'Left and right are those of the person seated; in the drawing from the front and from below the left is on the right.',
    );
  });

  it('say what each mark shows, by number, and are named where the finding stands', () => {
    const document = known.opinionOn({ ...known.chair, photos, plateOrder: ['d'] });
    const marks = platesOf(document)[0]?.marks.map((mark) => [mark.number, mark.says]);
    const name = known.knowledge.signs['saw-lines-band']?.name;
    expect(marks).toEqual([
      [1, 'A worn edge.'],
      [2, `${name}, splat.`],
    ]);
    expect(textsOf(section(document, 'findings')).join('\n')).toContain('Plate 1, mark 2.');
  });

  it('say of a sign that was not there that it was not', () => {
    const sought = known.chair.findings['saw-lines-band@splat'];
    if (sought === undefined) throw new Error('the example has lost a finding');
    const findings = { ...known.chair.findings, [sought.id]: { ...sought, state: 'absent' as const } };
    const document = known.opinionOn({ ...known.chair, findings, photos, plateOrder: ['d'] });
    expect(platesOf(document)[0]?.marks[1]?.says).toContain('splat: looked for and not there.');
  });

  it('never go without words for who can’t see them', () => {
    const document = known.opinionOn({ ...known.chair, photos });
    const alternatives = platesOf(document).map((plate) => plate.alternative);
    expect(alternatives).toContain('A dovetail seen from above.');
    expect(alternatives.some((each) => each.includes('Caption: The back.'))).toBe(true);
    expect(alternatives.some((each) => each.startsWith('Photograph of the splat;'))).toBe(true);
  });
});
