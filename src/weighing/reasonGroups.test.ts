import { describe, expect, it } from 'vitest';
import { bestDraw } from '../evidence/figures.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import { handPieces, signOf } from '../evidence/testing/handPieces.ts';
import { finished } from '../ground/steps.ts';
import { evaluate } from '../summation/evaluate.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { leadingOf } from '../summation/readingPosterior.ts';
import { reasonGroups } from './reasonGroups.ts';
import { weighLooks } from './weights.ts';

const later = (share: number) => ({ 'bench-copy': share, 'machine-copy': share, 'to-deceive': share });
const built = (id: string, period: number, copies: number) =>
  signOf(id, 'making', { period, ...later(copies) });
const aged = { natural: 90, none: 1, imitated: 1 };

const knowledge = handPieces({
  signs: [
    built('joint', 60, 30),
    built('pegs', 60, 30),
    built('plain', 60, 50),
    built('usual', 60, 50),
    built('seldom', 30, 60),
    built('odd', 30, 60),
    built('uncopied', 60, 0),
    signOf('dark', 'ageing', aged),
    signOf('worn', 'ageing', aged),
  ],
  odds: [9970, 10, 10, 10],
});

function groups(...signs: string[]) {
  const findings = signs.map((sign) => ({ sign, state: 'present' as const }));
  const ready = prepareCase({ form: 'box', mode: 'in-hand', findings }, knowledge, 2026);
  if (!ready.ok) throw new Error(JSON.stringify(ready.faults));
  const evaluation = evaluate(fixModel(layOut(ready.prepared), bestDraw()));
  const leading = leadingOf(evaluation.posterior);
  return finished(reasonGroups(evaluation, finished(weighLooks(evaluation, leading)), leading));
}
/** The groups in the order told, each with its decibans to the tenth. */
const told = (...signs: string[]) =>
  groups(...signs).map(({ cause, withinWhole }) => [
    cause.id,
    withinWhole === null ? null : Math.round(10 * withinWhole) / 10,
  ]);

describe('the groups of findings of one cause', () => {
  // Two findings twice as often on period work: 10·log₁₀ 4 = 6.0; 1.2 times: 1.6. How old a piece looks is summed over its years.
  it('stand the weightiest first, in whatever order they were found', () => {
    const heavier = [
      ['making', 6],
      ['ageing', 3.2],
    ];
    expect(told('joint', 'pegs', 'dark', 'worn')).toEqual(heavier);
    expect(told('dark', 'worn', 'joint', 'pegs')).toEqual(heavier);
    const lighter = [
      ['ageing', 3.2],
      ['making', 1.6],
    ];
    expect(told('plain', 'usual', 'dark', 'worn')).toEqual(lighter);
    expect(told('dark', 'worn', 'plain', 'usual')).toEqual(lighter);
  });

  it('that speak against the leading reading stand by how much they do', () => {
    expect(told('dark', 'worn', 'seldom', 'odd')).toEqual([
      ['making', -6],
      ['ageing', 3.2],
    ]);
  });

  it('stand before all where they make a limit, and last where others make it', () => {
    // “Uncopied” leaves nothing of any copy, whatever else was seen.
    for (const found of [
      ['dark', 'worn', 'uncopied', 'joint'],
      ['uncopied', 'joint', 'dark', 'worn'],
    ])
      expect(told(...found)).toEqual([
        ['making', null],
        ['ageing', null],
      ]);
  });

  it('each tell their findings, and why there is no number', () => {
    const [making, ageing] = groups('dark', 'uncopied', 'worn', 'joint');
    expect(making).toMatchObject({ cause: { kind: 'making' }, limit: { leavesNothingOf: 'others' } });
    expect(making?.looks.map(({ sign }) => sign.id)).toEqual(['uncopied', 'joint']);
    expect(ageing?.looks.map(({ sign }) => sign.id)).toEqual(['dark', 'worn']);
    expect(ageing?.words).toContain('it can’t be weighed beside that');
  });

  it('are none where no two findings share a cause', () => {
    expect(told('joint', 'dark')).toEqual([]);
    expect(told()).toEqual([]);
  });
});
