import { beforeAll, describe, expect, it } from 'vitest';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { opinionOf } from '../../src/opinion/setOpinion.ts';
import { type Piece, piece } from '../../src/piece/piece.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';
import { examplePiece, textsOf } from '../kits/opinions.ts';

const figures = {
  period: '60, 40–80',
  'bench-copy': '5, 1–10',
  'machine-copy': '2, 1–5',
  'to-deceive': '10, 4–20',
};
const own: { knowledge: Knowledge; chair: Piece } = {} as never;

/** The house's knowledge with one sign and one shop of the user's own; invented, for this test. */
beforeAll(async () => {
  const house = await houseKnowledge();
  const [sign, shop] = [house.signs['back-edges-chamfered'], Object.values(house.shops)[0]];
  if (sign === undefined || shop === undefined)
    throw new Error('the knowledge lacks what this test leans on');
  const shows = Object.fromEntries(Object.entries(figures).map(([state, in100]) => [state, { in100 }]));
  const basis = { by: 'judgement' as const, why: 'Seen on six chairs of one house.' };
  const chalk = {
    ...sign,
    id: 'own-chalk-cross',
    name: 'A cross in chalk',
    on: ['front-rail'],
    shows,
    basis,
    mine: true,
  };
  const lane = {
    ...shop,
    id: 'own-lane',
    name: 'Thistle Lane',
    place: 'Nowhere',
    years: [1740, 1800] as [number, number],
    forms: ['side-chair'],
    share: { in100: '20, 10–30' },
    habits: [{ sign: 'own-chalk-cross', shows: { in100: '95, 90–99' } }],
    basis,
    mine: true,
  };
  own.knowledge = {
    ...house,
    signs: { ...house.signs, [chalk.id]: chalk },
    shops: { ...house.shops, [lane.id]: lane },
  };
  const example = await examplePiece('side-chair');
  const finding = {
    id: 'f-own',
    sign: chalk.id,
    part: 'front-rail',
    state: 'present',
    sure: 'plain',
  };
  own.chair = piece.parse({
    ...example,
    findings: { ...example.findings, 'own-chalk-cross@front-rail': finding },
  });
}, 60_000);

describe('an opinion that leans on the examiner’s own sign and shop', () => {
  it('says so wherever it names them', () => {
    const opinion = opinionOf({
      piece: own.chair,
      knowledge: own.knowledge,
      yearNow: 2026,
      madeOn: '2026-11-25',
      version: '0.0.0-test',
      draws: 10,
    });
    const texts = textsOf(opinion);
    const naming = (name: string) => texts.filter((text) => text.includes(name));
    expect(naming('A cross in chalk').length).toBeGreaterThanOrEqual(3);
    for (const text of naming('A cross in chalk'))
      expect(text.split('A cross in chalk').length - 1).toBe(
        text.split('A cross in chalk (examiner’s own sign)').length - 1,
      );
    expect(naming('Thistle Lane').length).toBeGreaterThanOrEqual(1);
    for (const text of naming('Thistle Lane')) expect(text).toContain('Thistle Lane (examiner’s own file)');
    const limits = opinion.sections.find((section) => section.id === 'limits');
    expect(textsOf(limits).join('\n')).toContain(
      'Not of the program’s knowledge files but the examiner’s own',
    );
  }, 60_000);

  it('marks nothing where all is the program’s', async () => {
    const opinion = opinionOf({
      piece: await examplePiece('side-chair'),
      knowledge: await houseKnowledge(),
      yearNow: 2026,
      madeOn: '2026-11-25',
      version: '0.0.0-test',
      draws: 0,
    });
    expect(textsOf(opinion).join('\n')).not.toContain('examiner’s own sign');
  }, 60_000);
});
