import { beforeAll, describe, expect, it } from 'vitest';
import { askedOf } from '../../src/knowledge/askedOf.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { fieldGuide } from '../../src/opinion/fieldGuide.ts';
import { fieldGuideTypst, inRuns } from '../../src/opinion/fieldGuideTypst.ts';
import { makeFieldGuide } from '../../src/opinion/makeFieldGuide.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';

const known: { knowledge: Knowledge } = {} as never;
beforeAll(async () => {
  known.knowledge = await houseKnowledge();
}, 60_000);

function guideOf(of: { form: string } | { family: string }, knowledge = known.knowledge) {
  const guide = fieldGuide(of, knowledge);
  if (guide === undefined) throw new Error('there is no such guide');
  return guide;
}

describe('a field guide', () => {
  it('prints every sign asked of a form once, numbered in order, and points to each from its parts', () => {
    const { knowledge } = known;
    const chair = knowledge.forms['side-chair'];
    if (chair === undefined) throw new Error('the side chair is gone');
    const guide = guideOf({ form: 'side-chair' });
    const kinds = ['whole', ...chair.parts.map((part) => part.kind)];
    const asked = Object.values(knowledge.signs).filter((sign) =>
      kinds.some((kind) => askedOf(sign, kind, chair)),
    );
    const entries = guide.stages.flatMap((stage) => stage.groups.flatMap((group) => group.entries));
    expect(entries.map((entry) => entry.name).sort()).toEqual(asked.map((sign) => sign.name).sort());
    expect(entries.map((entry) => entry.number)).toEqual(entries.map((_, at) => at + 1));
    const rail = guide.byPart.find(({ part }) => part === 'Front rail')?.numbers ?? [];
    const onRail = asked.filter((sign) => askedOf(sign, 'front-rail', chair)).map((sign) => sign.name);
    expect(
      entries
        .filter((entry) => rail.includes(entry.number))
        .map((entry) => entry.name)
        .sort(),
    ).toEqual(onRail.sort());
    expect(guide.cautions.slice(0, chair.cautions.length)).toEqual(chair.cautions);
  });

  it('goes from what disturbs a piece least to what disturbs it most', () => {
    const titles = guideOf({ form: 'chest-of-drawers' }).stages.map((stage) => stage.title);
    expect(titles[0]).toBe('As it stands');
    expect(titles.at(-1)).toMatch(/^In a laboratory/);
  });

  it('lists each work once, and every number at a sign is on the list', () => {
    const guide = guideOf({ family: 'saw-marks' });
    const numbers = guide.works.map((work) => work.number);
    expect(numbers).toEqual(numbers.map((_, at) => at + 1));
    const used = guide.stages.flatMap((stage) =>
      stage.groups.flatMap((group) => group.entries.flatMap((entry) => entry.works.split(', ').map(Number))),
    );
    expect(Math.max(...used)).toBeLessThanOrEqual(numbers.length);
  });

  it('marks the user’s own and sets what they typed as words, never as commands', async () => {
    const { knowledge } = known;
    const [first] = Object.values(knowledge.signs).filter((sign) => sign.family === 'saw-marks');
    if (first === undefined) throw new Error('the saw marks are gone');
    const own = { ...first, name: 'A "#sys" \\mark 漢', mine: true };
    const guide = guideOf(
      { family: 'saw-marks' },
      { ...knowledge, signs: { ...knowledge.signs, [first.id]: own } },
    );
    expect(guide.ofYourOwn).toMatch(/One of the signs is your own/);
    expect(fieldGuideTypst(guide).source).toContain('mine: true');
    const pdf = Buffer.from(await makeFieldGuide(guide));
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  }, 60_000);

  it('is tagged, and the same again from the same knowledge', async () => {
    const guide = guideOf({ family: 'saw-marks' });
    const [one, two] = [await makeFieldGuide(guide), await makeFieldGuide(guide)];
    expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
    expect(Buffer.from(one).toString('latin1')).toMatch(/\/MarkInfo/);
  }, 60_000);

  it('is not there for a form or a family that is not', () => {
    expect(fieldGuide({ form: 'throne' }, known.knowledge)).toBeUndefined();
    expect(fieldGuide({ family: '' }, known.knowledge)).toBeUndefined();
  });
});

it('writes numbers in runs', () => {
  expect(inRuns([1, 2, 3, 5, 7, 8])).toBe('1–3, 5, 7, 8');
  expect(inRuns([])).toBe('');
});
