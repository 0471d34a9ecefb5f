import { form, type Knowledge, sign } from '../../knowledge/schema.ts';
import { smallKnowledge } from './smallKnowledge.ts';

/** Of 100 pieces of each making, how many show a sign. */
type Shares = readonly [period: string, bench: string, machine: string, deceive: string];

/**
 * Made-up knowledge so bare that a weighing of it is done by hand: one form with nothing to alter, no shops, nothing renewed
 * and an examiner who never errs. So the mass of a reading is the odds of its making times the shares of the signs seen.
 */
export function handKnowledge(
  signs: Record<string, Shares>,
  odds: readonly [number, number, number, number] = [40, 30, 20, 10],
): Knowledge {
  const small = smallKnowledge();
  const never = { in100: '0, 0–0' };
  const always = { in100: '100, 100–100' };
  const [period, bench, machine, deceive] = odds;
  const made = Object.entries(signs).map(([id, shares]) => handSign(id, shares));
  return {
    ...small,
    signs: Object.fromEntries(made.map((each) => [each.id, { ...each, family: 'made-up' }])),
    alterations: {},
    shops: {},
    forms: {
      box: form.parse({
        id: 'box',
        name: 'Box',
        family: 'case',
        sides: 'facing',
        what: 'A made-up box.',
        styleSpan: [1700, 1790],
        parts: ['board', 'lid'].map((id) => ({ id, kind: 'board', name: id, renewed: '0, 0–0' })),
        alterations: [],
        measures: [],
        drawing: [],
      }),
    },
    making: {
      ...small.making,
      startingOdds: {
        typed: {
          name: 'Typed',
          period,
          'bench-copy': bench,
          'machine-copy': machine,
          'to-deceive': deceive,
          why: 'Made up.',
        },
      },
      defaultOdds: 'typed',
      reused: {
        period: never,
        'bench-copy': never,
        'machine-copy': never,
        'to-deceive': never,
        ofOldStock: never,
      },
      oldStock: { period: never, 'bench-copy': never, 'to-deceive': never },
      sureness: {
        plain: { there: always, notThere: never },
        fairly: { there: { in100: '90, 85–95' }, notThere: { in100: '10, 5–15' } },
        hint: { there: { in100: '70, 60–80' }, notThere: { in100: '30, 20–40' } },
      },
    },
  };
}

function handSign(id: string, [period, bench, machine, deceive]: Shares) {
  const shares = { period, 'bench-copy': bench, 'machine-copy': machine, 'to-deceive': deceive };
  const shows = Object.fromEntries(
    Object.entries(shares).map(([making, share]) => [
      making,
      share.includes(',') ? share : `${share}, ${share}–${share}`,
    ]),
  );
  return sign.parse({
    id,
    name: `Sign ${id}`,
    look: 'Look.',
    minutes: 1,
    on: ['whole', 'board'],
    hangsOn: 'making',
    basis: { by: 'judgement', why: 'Made up for checking sums.' },
    shows,
  });
}
