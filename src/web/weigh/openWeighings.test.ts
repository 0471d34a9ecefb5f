import { afterEach, describe, expect, it } from 'vitest';
import type { CaseToWeigh } from '../../evidence/caseToWeigh.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import { pretendWorkers, settled } from '../worker/testing/pretendWorkers.ts';
import { openWeighings, type Weighings } from './openWeighings.ts';
import type { WeighingWorker } from './worker.ts';

const known = { knowledge: {} as Knowledge, yearNow: 2026 };
const caseOf = (form: string) => JSON.stringify({ form, mode: 'in-hand', findings: [] });
const lookOf = (form: string) => [{ sign: form }] as unknown as Weighing['nextLooks'];
const levelOf = ({ quick, draws }: CaseToWeigh) => (quick ? 'short' : draws === 0 ? 'looks' : 'intervals');
type Answer = ReturnType<WeighingWorker['weigh']>;

/** Weighings over pretended workers: all that was begun, by case and level, and a way to hold an answer back. */
function someWeighings({ holds = '', breaks = 'none', settleMs = 5 } = {}) {
  const begun: string[] = [];
  const gate: { open?: () => void } = {};
  const { started, start } = pretendWorkers(() => ({
    know: () => {},
    async weigh(
      input: CaseToWeigh,
      progress?: (share: number) => void,
      early?: (looks: object) => void,
      first?: (answer: object) => void,
    ) {
      const name = `${input.form} ${levelOf(input)}`;
      begun.push(name);
      if (name.startsWith(breaks)) throw new Error('out of memory');
      await progress?.(0.5);
      await early?.({ nextLooks: lookOf(`${input.form} early`) });
      await first?.({ leading: `${input.form} first` });
      if (name === holds)
        await new Promise<void>((open) => {
          gate.open = open;
        });
      return { ok: true, output: { leading: name, nextLooks: lookOf(input.form) } } as unknown as Answer;
    },
    async suspect(input: CaseToWeigh, alteration: string) {
      const name = `${input.form} suspect`;
      begun.push(`${name} ${alteration}`);
      if (name.startsWith(breaks)) throw new Error('out of memory');
      if (name === holds) await new Promise<void>(() => {});
      return { ok: true, output: { alteration, name } } as never;
    },
  }));
  const weighings = openWeighings(known, start, settleMs);
  opened.push(weighings);
  return { begun, gate, started, weighings };
}
const opened: Weighings[] = [];
afterEach(() => {
  for (const each of opened.splice(0)) each.close();
});
const rest = async () => {
  for (let i = 0; i < 4; i += 1) await settled();
};

describe('the weighing of the piece that lies open', () => {
  it('is made once for all pages: no level of a case is weighed twice, whoever asks', async () => {
    const { begun, weighings } = someWeighings();
    weighings.want('p', caseOf('chair'), 'looks');
    weighings.want('p', caseOf('chair'), 'looks');
    await rest();
    expect(begun).toEqual(['chair short', 'chair looks']);
    weighings.want('p', caseOf('chair'), 'intervals');
    await rest();
    for (const depth of ['looks', 'looks', 'intervals', 'looks'] as const) {
      weighings.want('p', caseOf('chair'), depth);
      await rest();
    }
    expect(begun).toEqual(['chair short', 'chair looks', 'chair intervals']);
    expect(weighings.standOf('p')).toMatchObject({
      depth: 'intervals',
      progress: undefined,
      weighing: { leading: 'chair intervals' },
      nextLooks: lookOf('chair'),
    });
  });

  it('is left to run on while pages change, and begun anew when the findings do', async () => {
    const { begun, gate, started, weighings } = someWeighings({ holds: 'a intervals' });
    weighings.want('p', caseOf('a'), 'intervals');
    await rest();
    weighings.want('p', caseOf('a'), 'looks');
    expect(weighings.standOf('p')).toMatchObject({ progress: 0.5, nextLooks: lookOf('a early') });
    expect(started.filter((each) => each.ended)).toHaveLength(0);
    weighings.want('p', caseOf('b'), 'looks');
    expect(started.filter((each) => each.ended)).toHaveLength(1);
    gate.open?.();
    await rest();
    expect(weighings.standOf('p')).toMatchObject({ of: caseOf('b'), weighing: { leading: 'b looks' } });
    expect(begun).toEqual(['a short', 'a intervals', 'b short', 'b looks']);
  });

  it('tells the first answer before the weights of the same case are known, and the old weighing stays till then', async () => {
    const { gate, weighings } = someWeighings({ holds: 'b short', settleMs: 60_000 });
    weighings.want('p', caseOf('a'), 'looks');
    await rest();
    weighings.want('p', caseOf('b'), 'looks');
    await expect.poll(() => gate.open).toBeDefined();
    expect(weighings.standOf('p')).toMatchObject({
      of: caseOf('a'),
      weighing: { leading: 'a short' },
      first: { leading: 'b first' },
    });
    weighings.want('p', caseOf('a'), 'looks');
    expect(weighings.standOf('p').first).toMatchObject({ leading: 'a short' });
    gate.open?.();
    await rest();
    expect(weighings.standOf('p').first).toMatchObject({ leading: 'a short' });
  });

  it('tests one suspicion at a time: a newer one ends the older, which answers nothing, and breaks are said in words', async () => {
    const { begun, weighings } = someWeighings({ holds: 'a suspect', breaks: 'c suspect' });
    const older = weighings.suspect(caseOf('a'), 'arms-added');
    await rest();
    const newer = weighings.suspect(caseOf('b'), 'arms-added');
    expect(await older).toBeUndefined();
    expect(await newer).toMatchObject({ output: { name: 'b suspect' } });
    expect(begun).toEqual(['a suspect arms-added', 'b suspect arms-added']);
    expect(await weighings.suspect(caseOf('c'), 'refinished')).toMatchObject({
      ok: false,
      faults: [{ code: 'weigh.broke-off' }],
    });
  });

  it('takes no answer of a case that is not the newest any more', async () => {
    const { begun, gate, weighings } = someWeighings({ holds: 'first short', settleMs: 60 });
    for (const form of ['first', 'second', 'third']) weighings.want('p', caseOf(form), 'looks');
    await expect.poll(() => weighings.standOf('p').of).toBe(caseOf('third'));
    gate.open?.();
    await rest();
    expect(weighings.standOf('p')).toMatchObject({
      of: caseOf('third'),
      first: { leading: expect.stringContaining('third') },
    });
    expect(begun.filter((each) => each.endsWith('short'))).toEqual([
      'first short',
      'second short',
      'third short',
    ]);
  });

  it('begins the longer weighing only once the short one has its answer, and weighs on after a change is taken back', async () => {
    const { begun, gate, weighings } = someWeighings({ holds: 'a short' });
    weighings.want('p', caseOf('a'), 'looks');
    await expect.poll(() => gate.open).toBeDefined();
    await rest();
    expect(begun).toEqual(['a short']);
    gate.open?.();
    await rest();
    expect(begun).toEqual(['a short', 'a looks']);
    weighings.want('p', caseOf('b'), 'looks');
    weighings.want('p', caseOf('a'), 'looks');
    await rest();
    weighings.want('p', caseOf('a'), 'intervals');
    weighings.want('p', caseOf('c'), 'looks');
    await rest();
    expect(weighings.standOf('p')).toMatchObject({ of: caseOf('c'), depth: 'looks' });
  });

  it('shows again what still stands when a change is taken back before it was weighed', async () => {
    const { begun, gate, weighings } = someWeighings({ holds: 'b short' });
    weighings.want('p', caseOf('a'), 'looks');
    await rest();
    weighings.want('p', caseOf('b'), 'looks');
    weighings.want('p', caseOf('a'), 'looks');
    await expect.poll(() => gate.open).toBeDefined();
    gate.open?.();
    await rest();
    expect(weighings.standOf('p')).toMatchObject({ of: caseOf('a'), depth: 'looks', progress: undefined });
    expect(begun).toEqual(['a short', 'a looks', 'b short']);
  });

  it('ends when told to, keeps what was weighed in short, and begins again', async () => {
    const { started, weighings } = someWeighings({ holds: 'a intervals' });
    weighings.want('p', caseOf('a'), 'intervals');
    await rest();
    weighings.cancel();
    expect(started.some((each) => each.ended)).toBe(true);
    await rest();
    expect(weighings.standOf('p')).toMatchObject({ depth: 'short', progress: undefined });
    weighings.want('p', caseOf('a'), 'intervals');
    await rest();
    expect(weighings.standOf('p').progress).toBe(0.5);
  });

  it('says in words that a worker broke off, and opens a new one for the next case', async () => {
    const { weighings } = someWeighings({ breaks: 'a' });
    weighings.want('p', caseOf('a'), 'looks');
    await expect
      .poll(() => weighings.standOf('p').faults[0]?.message)
      .toMatch(/out of memory.*nothing that was recorded is lost/);
    weighings.want('p', caseOf('b'), 'looks');
    await rest();
    expect(weighings.standOf('p')).toMatchObject({ faults: [], weighing: { leading: 'b looks' } });
  });

  it('knows nothing of another piece', async () => {
    const { weighings } = someWeighings();
    weighings.want('p', caseOf('a'), 'looks');
    await rest();
    expect(weighings.standOf('q').weighing).toBeUndefined();
    weighings.want('q', caseOf('b'), 'looks');
    expect(weighings.standOf('q').weighing).toBeUndefined();
    expect(weighings.standOf('p').weighing).toBeUndefined();
  });
});
