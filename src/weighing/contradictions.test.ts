import { describe, expect, it } from 'vitest';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import {
  alterationOf,
  handPieces,
  type Made,
  makingSign,
  shopOf,
  signOf,
} from '../evidence/testing/handPieces.ts';
import { weighCase } from './weighCase.ts';

// Worked by hand from the shares typed here: of 100 pieces so many show a sign, and nothing else bears on it.
type Finding = CaseToWeigh['findings'][number];
const present = (id: string, part?: string): Finding => ({
  sign: id,
  state: 'present',
  ...(part === undefined ? {} : { part }),
});

function weigh(made: Made, ...findings: Finding[]) {
  const result = weighCase({ form: 'box', mode: 'in-hand', quick: true, findings }, handPieces(made), {
    yearNow: 2026,
  });
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.output;
}
const jarring = (made: Made, ...findings: Finding[]) => weigh(made, ...findings).contradictions;
/** Each explanation as its kind, whose, and how many of 100. */
const explained = ({ explanations }: ReturnType<typeof jarring>[number]) =>
  explanations.map(({ kind, id, share }) => [kind, id, Math.round(1e6 * share) / 1e4]);

describe('a shop’s habit', () => {
  const joint = makingSign('joint', 2, 30);
  const intact = 'a period piece, substantially intact';

  it('that is weighed in already is asked about, and only by that', () => {
    // Half of all period work is the shop's: 0.5·0.9 + 0.5·0.02 = 46 in 100 show it; without its file 2 in 100.
    expect(
      jarring({ signs: [joint], shops: [shopOf('north', 50, { joint: 90 })] }, present('joint')),
    ).toEqual([
      {
        sign: 'joint',
        part: null,
        state: 'present',
        share: expect.closeTo(0.02, 9),
        question: `“Sign joint” was seen on the piece as a whole: if it were ${intact}, and nothing else explained it, about 2 in 100 would show this. Does what explains it here hold?`,
        explained: true,
        explanations: [
          {
            kind: 'shop',
            id: 'north',
            words: 'If it is work of The north shop, Northam: there it is the habit.',
            share: expect.closeTo(0.9, 9),
          },
        ],
      },
    ]);
  });

  it('of a shop that made few pieces is one explanation among others, the best first', () => {
    // 0.03·0.9 + 0.97·0.02 = 4.64 in 100.
    const [jar] = jarring({ signs: [joint], shops: [shopOf('north', 3, { joint: 90 })] }, present('joint'));
    expect(jar).toMatchObject({ explained: false, share: expect.closeTo(0.0464, 9) });
    expect(jar?.question).toContain(`if it were ${intact}, and all else as found, about 5 in 100`);
    const [first, ...rest] = jar ? explained(jar) : [];
    expect(first).toEqual(['shop', 'north', 90]);
    // The three later readings show it alike: in which order they stand is left open.
    expect(rest.map(([kind, , share]) => [kind, share])).toEqual(Array(3).fill(['reading', 30]));
  });

  it('explains what it makes probable enough, and no shop without it does', () => {
    const shops = [shopOf('north', 1, { joint: 90 }), shopOf('south', 60, { usual: 90 })];
    const [jar] = jarring({ signs: [joint, makingSign('usual', 50, 50)], shops }, present('joint'));
    expect(jar && explained(jar).filter(([kind]) => kind === 'shop')).toEqual([['shop', 'north', 90]]);
  });

  it('of six explanations or more is told with the six best', () => {
    const shops = [91, 92, 93, 94, 95].map((share) => shopOf(`s${share}`, 0.2, { joint: share }));
    const [jar] = jarring({ signs: [joint], shops }, present('joint'));
    expect(jar && explained(jar).map(([, , share]) => share)).toEqual([95, 94, 93, 92, 91, 30]);
  });

  it('of five shops that is weighed in already is told of all five, however many other readings show it oftener', () => {
    const shops = [91, 92, 93, 94, 95].map((share) => shopOf(`s${share}`, 10, { joint: share }));
    const [jar] = jarring({ signs: [makingSign('joint', 2, 99)], shops }, present('joint'));
    expect(jar).toMatchObject({ explained: true, share: expect.closeTo(0.02, 9) });
    expect(jar && explained(jar).map(([kind, , share]) => [kind, share])).toEqual(
      [95, 94, 93, 92, 91].map((share) => ['shop', share]),
    );
  });

  it('is no riddle where the sign is common enough without it', () => {
    // Of unlisted shops 12 in 100 show it, or 30.
    for (const often of [12, 30])
      expect(
        jarring(
          { signs: [makingSign('joint', often, 30)], shops: [shopOf('north', 50, { joint: 90 })] },
          present('joint'),
        ),
      ).toEqual([]);
    // 9.9 in 100 is one.
    const seldom = { signs: [makingSign('joint', 9.9, 30)], shops: [shopOf('north', 50, { joint: 90 })] };
    expect(jarring(seldom, present('joint'))).toHaveLength(1);
  });

  it('is judged with all else that was found', () => {
    // Two habits of one shop: the other makes the shop probable, and each is 2 in 100 without it.
    const signs = [joint, makingSign('twin', 4, 30), makingSign('usual', 50, 50)];
    const shops = [shopOf('north', 50, { joint: 90, twin: 80 })];
    const found = jarring(
      { signs, shops },
      present('twin', 'lid'),
      present('joint'),
      present('usual', 'board'),
    );
    expect(found.map(({ sign: id, share }) => [id, Math.round(1e6 * share) / 1e4])).toEqual([
      ['joint', 2],
      ['twin', 4],
    ]);
    expect(found.map(explained)).toEqual([[['shop', 'north', 90]], [['shop', 'north', 80]]]);
  });

  it('is no riddle where all else leaves nothing of work without it', () => {
    // The twin is never seen on other work: how often the joint would then be can’t be told, and is 30 in 100 by itself.
    const signs = [makingSign('joint', 30, 30), makingSign('twin', 0, 30)];
    const shops = [shopOf('north', 50, { joint: 90, twin: 80 })];
    expect(jarring({ signs, shops }, present('twin'), present('joint')).map(({ sign: id }) => id)).toEqual([
      'twin',
    ]);
  });

  it('bears on period work alone, and on signs of the making alone', () => {
    // A copy leads, and 30 in 100 copies show it.
    const later = { signs: [joint], shops: [shopOf('north', 50, { joint: 90 })] };
    expect(jarring({ ...later, odds: [1, 9997, 1, 1] }, present('joint'))).toEqual([]);
    const holes = signOf('joint', 'origin', { 'of-the-making': 3, repair: 60, improve: 8, 'other-old': 20 });
    const [jar] = jarring(
      { signs: [holes], shops: [shopOf('north', 3, { joint: 90 })] },
      present('joint', 'lid'),
    );
    expect(jar && explained(jar)).toEqual([]);
  });

  it('is told with what the finding would weigh if no shop file were known', () => {
    // For period against later 2 : 30 without the file, 46 : 30 with it.
    const withShop = (share: number, ...signs: Made['signs']) =>
      weigh({ signs, shops: [shopOf('north', share, { joint: 90 })] }, present('joint')).weights[0];
    const weight = withShop(50, joint);
    expect(weight?.withoutShopFiles).toBeCloseTo(10 * Math.log10(2 / 30), 6);
    expect(weight?.periodAgainstLater.withinWhole).toBeCloseTo(10 * Math.log10(46 / 30), 6);
    // The shop made it in 8 of 100 cases, then in 11: 0.9·s : 0.9·s + 0.02·(1 − s).
    expect(withShop(0.19, joint)).not.toHaveProperty('withoutShopFiles');
    expect(withShop(0.3, joint)).toHaveProperty('withoutShopFiles');
    // So for a habit among several, whatever else was seen: 2 : 30 with its twin beside it, too.
    const [beside] = weigh(
      { signs: [joint, makingSign('twin', 4, 30)], shops: [shopOf('north', 50, { joint: 90, twin: 80 })] },
      present('joint'),
      present('twin'),
    ).weights;
    expect(beside?.withoutShopFiles).toBeCloseTo(10 * Math.log10(2 / 30), 6);
    // Not of a sign that is no habit of the shop, nor of one that does not speak of the making.
    const plain = weigh(
      { signs: [joint, makingSign('usual', 50, 50)], shops: [shopOf('north', 50, { joint: 90 })] },
      present('usual'),
    );
    expect(plain.weights[0]).not.toHaveProperty('withoutShopFiles');
    const holes = signOf('joint', 'origin', { 'of-the-making': 3, repair: 60, improve: 8, 'other-old': 20 });
    expect(withShop(50, holes)).not.toHaveProperty('withoutShopFiles');
    // Nor where nothing but the file leaves anything of period work.
    expect(withShop(50, makingSign('joint', 0, 30))).not.toHaveProperty('withoutShopFiles');
  });
});

describe('a part’s later origin', () => {
  const holes = signOf('holes', 'origin', { 'of-the-making': 3, repair: 60, improve: 8, 'other-old': 20 });
  const made = { signs: [holes], renewed: 40 };

  it('that is weighed in already is asked about', () => {
    // 0.6·0.03 of lids of the making, 0.4·0.6 of renewed ones: the lid is most probably a repair, and by itself jars at 3 in 100.
    expect(jarring(made, present('holes', 'lid'))).toEqual([
      {
        sign: 'holes',
        part: 'lid',
        state: 'present',
        share: expect.closeTo(0.03, 9),
        question:
          '“Sign holes” was seen on the lid: if it were a period piece with later repairs, and nothing else explained it, about 3 in 100 would show this. Does what explains it here hold?',
        explained: true,
        explanations: [
          {
            kind: 'origin',
            id: 'repair',
            words: 'If the lid is a later repair or renewal.',
            share: expect.closeTo(0.6, 9),
          },
        ],
      },
    ]);
  });

  it('may be another old piece, where old parts were put in', () => {
    // Of 100 lids 50 were taken from an old piece: of those 20 in 100 show it, of renewed ones 60.
    const [jar] = jarring({ ...made, reused: 50 }, present('holes', 'lid'));
    expect(jar && explained(jar)).toEqual([
      ['origin', 'repair', 60],
      ['origin', 'other-old', 20],
    ]);
    expect(jar?.explanations[1]?.words).toMatch(/^If the lid is .+\.$/);
  });

  it('is no riddle where the part is often renewed, or most probably of the making', () => {
    expect(jarring({ ...made, structural: false }, present('holes', 'lid'))).toEqual([]);
    // Of 100 lids 2 were renewed: 0.98·0.03 beside 0.02·0.6; then the finding itself does not fit.
    const [jar] = jarring({ ...made, renewed: 2 }, present('holes', 'lid'));
    expect(jar).toMatchObject({ explained: false, share: expect.closeTo(0.03, 2) });
    expect(jar && explained(jar)).toContainEqual(['origin', 'repair', 60]);
  });

  it('is told by its most telling finding on each part; what a shop explains is told besides', () => {
    const nails = signOf('nails', 'origin', { 'of-the-making': 8, repair: 60, improve: 8, 'other-old': 20 });
    const joint = makingSign('joint', 2, 30);
    const found = jarring(
      { ...made, signs: [holes, nails, joint], shops: [shopOf('north', 50, { joint: 90 })] },
      present('nails', 'lid'),
      present('holes', 'lid'),
      present('nails', 'board'),
      present('joint', 'whole'),
    );
    expect(found.map(({ sign: id, part, explained: is }) => [id, part, is])).toEqual([
      ['joint', null, true],
      ['holes', 'lid', true],
      ['nails', 'board', true],
    ]);
  });

  it('and the habit of a shop seen on the same part are both told, whichever tells more', () => {
    // Of lids of the making 0.01·0.9 + 0.99·0.009 show it, or with 0.05: less or more than the 3 in 100 that show the holes.
    for (const [usual, first] of [
      [0.9, 'joint'],
      [5, 'holes'],
    ] as const) {
      const joint = signOf('joint', 'making', {
        period: usual,
        'bench-copy': usual,
        'machine-copy': usual,
        'to-deceive': usual,
        later: 50,
      });
      const found = jarring(
        { ...made, signs: [holes, joint], shops: [shopOf('north', 1, { joint: 90 })] },
        present('holes', 'lid'),
        present('joint', 'lid'),
      );
      expect(found.map(({ sign: id, explained: is }) => [id, is])).toEqual([
        [first, true],
        [first === 'joint' ? 'holes' : 'joint', true],
      ]);
      const byShop = found.find(({ sign: id }) => id === 'joint');
      expect(byShop?.share).toBeCloseTo(0.009 + (0.99 * usual) / 100, 9);
      expect(byShop?.explanations.map(({ kind }) => kind)).toEqual(['shop', 'origin']);
    }
  });

  it('is no riddle where another finding leaves nothing of a part of the making', () => {
    const never = signOf('never', 'origin', { 'of-the-making': 0, repair: 60, improve: 8, 'other-old': 20 });
    const often = signOf('often', 'origin', {
      'of-the-making': 50,
      repair: 50,
      improve: 50,
      'other-old': 50,
    });
    const found = jarring(
      { ...made, signs: [never, often] },
      present('never', 'lid'),
      present('often', 'lid'),
    );
    expect(found.map(({ sign: id, share }) => [id, share])).toEqual([['never', 0]]);
  });

  it('stands behind what nothing explains', () => {
    // On the same part and less telling: it stays, for nothing explains it.
    const rare = signOf('rare', 'origin', { 'of-the-making': 5, repair: 5, improve: 5, 'other-old': 5 });
    const found = jarring({ ...made, signs: [holes, rare] }, present('holes', 'lid'), present('rare', 'lid'));
    expect(found.map(({ sign: id, explained: is }) => [id, is])).toEqual([
      ['rare', false],
      ['holes', true],
    ]);
  });

  it('explains nothing that was seen on the piece as a whole, or that is a trace of an alteration', () => {
    const whole = { ...holes, on: ['whole'] };
    const [jar] = jarring({ ...made, signs: [whole] }, present('holes'));
    expect(jar && explained(jar).filter(([kind]) => kind === 'origin')).toEqual([]);
    const trace = signOf('trace', 'alteration/waxed', { happened: 60, not: 2 });
    const waxed = { signs: [trace, holes], alterations: [alterationOf('waxed', 'upkeep', 10)], renewed: 40 };
    const [other] = jarring(waxed, present('trace', 'lid'));
    expect(other && explained(other)).toEqual([['alteration', 'waxed', 60]]);
    // Nor is the trace asked about by what the part would show if it were of the making: here 30 in 100 show it.
    const often = { ...waxed, alterations: [alterationOf('waxed', 'upkeep', 50)] };
    expect(
      jarring(often, present('trace', 'lid'), present('holes', 'lid')).map(({ sign: id }) => id),
    ).toEqual(['holes']);
  });
});

describe('an alteration', () => {
  const trace = signOf('trace', 'alteration/waxed', { happened: 60, not: 2 });

  it('explains its trace', () => {
    // 0.1·0.6 + 0.9·0.02 = 7.8 in 100.
    const [jar] = jarring(
      { signs: [trace, makingSign('usual', 50, 50)], alterations: [alterationOf('waxed', 'upkeep', 10)] },
      present('trace', 'lid'),
      present('usual', 'board'),
    );
    expect(jar).toMatchObject({ explained: false, share: expect.closeTo(0.078, 9) });
    expect(jar?.explanations).toEqual([
      {
        kind: 'alteration',
        id: 'waxed',
        words: 'If this happened: changed by waxed.',
        share: expect.closeTo(0.6, 9),
      },
    ]);
  });

  it('that puts a piece together from old ones is a reading of its own', () => {
    const [jar] = jarring(
      { signs: [trace], alterations: [alterationOf('waxed', 'make-up', 1)] },
      present('trace'),
    );
    // Of pieces left as they were 2 in 100 show it, of those put together 60.
    expect(jar).toMatchObject({ explained: false, share: expect.closeTo(0.02, 9) });
    expect(jar && explained(jar)).toEqual([['reading', 'made-up', 60]]);
  });
});

it('is told whether it was seen or not, and how seldom that is', () => {
  const [rare] = jarring({ signs: [makingSign('rare', 0.4, 0.4)] }, present('rare'));
  expect(rare?.question).toContain('“Sign rare” was seen on the piece as a whole');
  expect(rare?.question).toContain('fewer than 1 in 100 would show this');
  const [missed] = jarring({ signs: [makingSign('usual', 95, 95)] }, { sign: 'usual', state: 'absent' });
  expect(missed?.question).toContain('“Sign usual” was looked for and not seen on the piece as a whole');
  expect(missed?.question).toContain('about 5 in 100 would show this');
});

describe('a measurement that jars', () => {
  it('is told by how much less probable it is, and whether what explains it holds', () => {
    const joint = makingSign('joint', 0, 30);
    const measured = { ...present('joint'), likelihoods: { present: 99, absent: 1 } };
    // None of unlisted work shows it; the measurement speaks for it 99 to 1, which is all that counts.
    const [jar] = jarring({ signs: [joint], shops: [shopOf('north', 50, { joint: 90 })] }, measured);
    expect(jar).toMatchObject({ measured: true, explained: true, part: null });
    expect(jar?.share).toBeCloseTo(0.01, 9);
    expect(jar?.question).toBe(
      'What was measured for “Sign joint” on the piece as a whole is about 99 times less probable for a period piece, substantially intact than where it fits best. Does what explains it here hold?',
    );
    const states = { period: 0.001, 'bench-copy': 1, 'machine-copy': 1, 'to-deceive': 1 };
    const [sure] = jarring({ signs: [joint] }, { ...present('joint', 'lid'), likelihoods: states });
    expect(sure?.question).toBe(
      'What was measured for “Sign joint” on the lid is about 99 times less probable for a period piece, substantially intact than where it fits best. What explains it?',
    );
  });
});
