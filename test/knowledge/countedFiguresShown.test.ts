import { beforeAll, expect, test } from 'vitest';
import { compileKnowledge } from '../../src/knowledge/compileKnowledge.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { entryOfGuide } from '../../src/opinion/fieldGuideEntry.ts';
import type { OpinionMaterial } from '../../src/opinion/opinionMaterial.ts';
import { figuresSection } from '../../src/opinion/sections/figures.ts';
import { figureLines } from '../../src/web/examination/figureWords.ts';
import { figureLine } from '../../src/web/reference/FigureTable.tsx';
import { soundKnowledge } from '../architecture/soundKnowledge.ts';

const count = 'counts: { seen: 10, of: 10, where: stools in two museums, source: saw-book }';
const words = /counted: 10 of 10 stools in two museums; judged before counting: 50, 30–70/i;
let knowledge: Knowledge;
beforeAll(() => {
  const compiled = compileKnowledge(
    soundKnowledge.map((file) => ({
      ...file,
      text: file.text
        .replace('shows: "90, 70–97"', `shows: { in100: "50, 30–70", by: judgement, ${count} }`)
        .replace('period: "40, 20–60"', `period: { in100: "50, 30–70", by: judgement, ${count} }`),
    })),
  );
  if (compiled.knowledge === undefined) throw new RangeError('the knowledge of this test is misshapen');
  knowledge = compiled.knowledge;
});

function sign() {
  const found = knowledge.signs['leg-square'];
  if (found === undefined) throw new RangeError('the sign of this test is gone');
  return found;
}

test('where a sign is answered, the figure stands with its count and what was judged before', () => {
  const [period, copy] = figureLines(sign(), knowledge.sources);
  expect([period?.best, period?.range]).toEqual(['58', '39–76']);
  expect(period?.who).toMatch(words);
  expect(copy?.who).not.toMatch(/counted/i);
});

test('the reference shows the same of a habit', () => {
  const shows = knowledge.shops['mill-lane']?.habits[0]?.shows;
  if (shows === undefined) throw new RangeError('the habit of this test is gone');
  const line = figureLine('Mill Lane', shows, undefined, knowledge.sources);
  expect([line.best, line.range]).toEqual(['58', '39–76']);
  expect(line.who).toMatch(words);
});

test('the guide to the signs says that a figure is counted', () => {
  const entry = entryOfGuide(sign(), {
    knowledge,
    number: 1,
    numberOf: new Map(),
    workNumbers: new Map(),
    on: 'front legs',
  });
  expect(entry.figures).toContain('58 (39–76, counted)');
  expect(entry.figures.match(/counted/g)).toHaveLength(1);
});

test('an opinion prints the figure, its count and what was judged, of the sign and of the shop’s habit', () => {
  const material = {
    piece: { findings: { one: { sign: 'leg-square' } }, observations: {} },
    knowledge,
    weighing: { observations: [], shops: [{ id: 'mill-lane', probability: 0.5 }] },
  } as unknown as OpinionMaterial;
  const rows = (figuresSection(material)?.blocks ?? []).flatMap((block) =>
    block.kind === 'table' ? block.groups.flatMap((group) => group.rows) : [],
  );
  const counted = rows.filter((row) => words.test(String(row[3])));
  expect(counted.map((row) => [row[1], row[2]])).toEqual([
    ['58', '39 – 76'],
    ['58', '39 – 76'],
  ]);
});

test('where several judged, sign, guide and opinion say what each said, and the opinion who they are', () => {
  const said = /2 judged apart: 50, 80/i;
  expect(figureLines(sign(), knowledge.sources).map(({ who }) => said.test(who))).toEqual([
    false,
    false,
    true,
    false,
  ]);
  const material = {
    piece: { findings: { one: { sign: 'leg-square' } }, observations: {} },
    knowledge,
    weighing: { observations: [], shops: [] },
  } as unknown as OpinionMaterial;
  const blocks = figuresSection(material)?.blocks ?? [];
  const rows = blocks.flatMap((block) =>
    block.kind === 'table' ? block.groups.flatMap((group) => group.rows) : [],
  );
  expect(rows.filter((row) => said.test(String(row[3]))).map((row) => row[1])).toEqual(['67']);
  const notes = blocks.flatMap((block) => (block.kind === 'paragraph' ? [String(block.words)] : []));
  expect(
    notes.some((words) => /asked on 30 November 2026 .* made up for a test; made up for a test/.test(words)),
  ).toBe(true);
  const alone = knowledge.alterations['leg-pieced']?.happened.period;
  const line = alone === undefined ? undefined : figureLine('Period', alone, undefined, knowledge.sources);
  expect([line?.best, line?.who]).toEqual(['10', 'asked for this alone, others said 20, 34: not taken in']);
});
