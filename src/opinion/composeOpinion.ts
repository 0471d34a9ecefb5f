import { paperWords } from '../engagement/papers.ts';
import { capital, counted } from '../ground/words.ts';
import { inSentence } from '../knowledge/inSentence.ts';
import { readingWords } from '../piece/readings.ts';
import { coverageWords, tellsDoubt } from '../units/doubt.ts';
import { formatYears } from '../units/years.ts';
import type { IssueHead } from './issueHead.ts';
import type { Block, OpinionDocument, Section } from './opinionDocument.ts';
import { materialOf, type OpinionInput, type OpinionMaterial } from './opinionMaterial.ts';
import { sectionsOfPaper } from './papers/sectionsOfPaper.ts';
import { withoutNames } from './papers/withoutNames.ts';
import { benchSection } from './sections/bench.ts';
import { cautionsSection, lawSection } from './sections/cautions.ts';
import { conclusionSection, reasonsSection } from './sections/conclusion.ts';
import { contradictionsSection } from './sections/contradictions.ts';
import { descriptionSection } from './sections/description.ts';
import { engagementSection } from './sections/engagement.ts';
import { figuresSection } from './sections/figures.ts';
import { findingsSection } from './sections/findings.ts';
import { forThisUseSection } from './sections/forThisUse.ts';
import { headBlocks, letterHead } from './sections/head.ts';
import { limitsSection } from './sections/limits.ts';
import { madeWithSection } from './sections/madeWith.ts';
import { periodAgainstLaterSection } from './sections/periodAgainstLater.ts';
import { platesSection } from './sections/plates.ts';
import { provenanceSection } from './sections/provenance.ts';
import { readingsSection } from './sections/readings.ts';
import { salesFound, salesSection } from './sections/sales.ts';
import { signatureSection } from './sections/signature.ts';
import { sourcesSection } from './sections/sources.ts';
import { standingSection } from './sections/standing.ts';
import { weightsSection } from './sections/weights.ts';
import { worthSection } from './sections/worth.ts';
import { yearsSection } from './sections/years.ts';

/**
 * The whole opinion on a piece as data: what was asked, seen and found, what it weighs, what the examiner concludes and
 * why, with the limits, the cautions and everything another expert needs to disagree with a number.
 *
 * Nothing is added that was not recorded or computed: what is blank is printed as not stated.
 *
 * @param input.weighing  left out where nothing could be weighed; the document then says so
 * @param input.madeOn    the day printed on it, `2026-11-25`; nothing here reads a clock
 * @source the order of a catalogue entry: common practice; what an evaluative report must hold: ENFSI guideline (2015)
 *   and AFSP standards (2009), from memory, not verified
 */
export function composeOpinion(input: OpinionInput): OpinionDocument {
  const material = materialOf(input);
  const { piece } = material;
  const { paper = 'full' } = input;
  const sections =
    paper === 'full' ? sectionsOf(material) : sectionsOfPaper(paper, material).map(withCoverage);
  const document: OpinionDocument = {
    paper,
    above: paperWords[paper].above,
    title: titleOf(material),
    line: lineOf(material),
    author: piece.engagement.examiner.trim() || piece.opinion.signedBy.trim(),
    // A handout and an Object ID sheet are no opinions: nobody signs them.
    draft: input.issue === undefined && paper !== 'lesson' && paper !== 'object-id',
    ...(input.issue === undefined ? {} : { issued: issuedFoot(input.issue) }),
    example: piece.example,
    madeOn: input.madeOn,
    keywords: [material.form?.name ?? '', piece.opinion.place].filter((each) => each !== ''),
    head: paper === 'letter' ? letterHead(material) : headBlocks(material),
    sections: lettered(sections),
  };
  return paper === 'lesson' ? withoutNames(document, piece) : document;
}

/** What the foot of every page says of the signing, short enough to be read out. */
function issuedFoot({ revision, recordId, count, head }: IssueHead): string {
  return `revision ${revision} · record ${recordId.slice(0, 8)}, ${counted(count, 'act')}, head ${head.slice(0, 12)}`;
}

function sectionsOf(material: OpinionMaterial): Section[] {
  const sales = salesFound(material);
  return [
    conclusionSection(material),
    reasonsSection(material),
    descriptionSection(material),
    standingSection(material),
    provenanceSection(material),
    worthSection(material, sales),
    forThisUseSection(material),
    limitsSection(material),
    cautionsSection(material),
    signatureSection(material),
    platesSection(material),
    engagementSection(material),
    findingsSection(material),
    benchSection(material),
    weightsSection(material),
    contradictionsSection(material),
    readingsSection(material),
    yearsSection(material),
    salesSection(material, sales),
    lawSection(material),
    periodAgainstLaterSection(material),
    figuresSection(material),
    sourcesSection(material),
    madeWithSection(material),
  ]
    .filter((section) => section !== undefined)
    .map(withCoverage);
}

/** A section that tells a doubt anywhere says below what it covers. */
function withCoverage(section: Section): Section {
  return tellsDoubt(JSON.stringify(section.blocks))
    ? { ...section, blocks: [...section.blocks, { kind: 'paragraph', as: 'note', words: coverageWords }] }
    : section;
}

/** The appendices named by letter in the order they stand. */
function lettered(sections: readonly Section[]): Section[] {
  const appendices = sections.filter((section) => section.appendix === true);
  const titled = sections.map((section) => {
    const place = appendices.indexOf(section);
    return place < 0
      ? section
      : {
          ...section,
          title: `Appendix ${String.fromCharCode(65 + place)}: ${inSentence(section.title)}`,
          apart: section.apart === true || place === 0,
        };
  });
  const listedAt = titled.findIndex((section) => section.appendix === true) - 1;
  return titled.map((section, index) =>
    index === listedAt ? { ...section, blocks: [...section.blocks, ...appendixList(titled)] } : section,
  );
}

/** What follows what is read, by letter: to stand where the appendices begin. */
function appendixList(sections: readonly Section[]): Block[] {
  const items = sections.filter(({ appendix }) => appendix === true).map(({ title }) => title);
  return [
    { kind: 'heading', words: 'Appendices' },
    { kind: 'list', items },
  ];
}

function titleOf({ piece, form }: OpinionMaterial): string {
  return piece.title.trim() || (form === undefined ? 'A piece of furniture' : capital(form.name));
}

/** Form, years and place by the examiner's conclusion; else by what it is said to be. */
function lineOf(material: OpinionMaterial): string {
  const { piece, form } = material;
  const { opinion, claim } = piece;
  const name = form === undefined ? '' : capital(form.name);
  const years = opinion.years ?? claim.period;
  const said = opinion.years === undefined && claim.period !== undefined ? 'said to be of ' : '';
  const line = [
    opinion.reading === undefined ? name : `${name}: ${readingWords[opinion.reading].inSentence}`,
    years === undefined ? '' : `${said}${formatYears(years)}`,
    opinion.place.trim(),
  ]
    .filter((each) => each !== '')
    .join(', ');
  return line === titleOf(material) ? '' : line;
}
