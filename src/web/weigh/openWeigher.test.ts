import { describe, expect, it } from 'vitest';
import type { CaseToWeigh } from '../../evidence/caseToWeigh.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import type { ToWeigher } from './messages.ts';
import { openWeigher, type WorkerLike } from './openWeigher.ts';

const known = { knowledge: {} as Knowledge, yearNow: 2026 };
const caseOf = (form: string): CaseToWeigh => ({ form, mode: 'in-hand', findings: [] });
const faultOf = (code: string) => ({ ok: false as const, faults: [{ code, path: '', message: '' }] });

/** Workers that keep what they are asked and answer when told to. */
function someWorkers() {
  const made: (WorkerLike & { heard: ToWeigher[]; ended: boolean })[] = [];
  const open = () => {
    const worker = {
      heard: [] as ToWeigher[],
      ended: false,
      onmessage: null,
      onerror: null,
      postMessage: (message: ToWeigher) => void worker.heard.push(message),
      terminate: () => {
        worker.ended = true;
      },
    } as WorkerLike & { heard: ToWeigher[]; ended: boolean };
    made.push(worker);
    return worker;
  };
  const answer = (at: number, code: string) => {
    const last = made[at]?.heard.at(-1);
    if (last?.say === 'weigh')
      made[at]?.onmessage?.({ data: { say: 'weighed', ask: last.ask, result: faultOf(code) } });
  };
  return { made, open, answer };
}

describe('a desk that weighs', () => {
  it('hands the knowledge over once and begins only the newest of the cases that came meanwhile', () => {
    const { made, open, answer } = someWorkers();
    const told: string[] = [];
    const desk = openWeigher(open, known, false);
    const ask = (form: string) =>
      desk.weigh(caseOf(form), { progress: () => undefined, result: () => told.push(form) });
    for (const form of ['first', 'second', 'third']) ask(form);
    answer(0, 'x');
    expect(told).toEqual([]);
    answer(0, 'x');
    expect(told).toEqual(['third']);
    const heard = made[0]?.heard.map((each) => (each.say === 'weigh' ? each.caseToWeigh.form : each.say));
    expect(heard).toEqual(['know', 'first', 'third']);
  });

  it('ends the worker of a long case when another takes its place, and hears no late answer', () => {
    const { made, open, answer } = someWorkers();
    const told: string[] = [];
    const desk = openWeigher(open, known, true);
    desk.weigh(caseOf('old'), { progress: () => undefined, result: () => told.push('old') });
    desk.weigh(caseOf('new'), { progress: () => undefined, result: () => told.push('new') });
    expect(made.map((each) => each.ended)).toEqual([true, false]);
    answer(1, 'x');
    expect(told).toEqual(['new']);
  });

  it('passes on the next looks before the result, and none of a case that was broken off', () => {
    const { made, open, answer } = someWorkers();
    const told: string[] = [];
    const desk = openWeigher(open, known, true);
    const ask = (form: string) =>
      desk.weigh(caseOf(form), {
        progress: () => undefined,
        early: () => told.push(`looks of ${form}`),
        result: () => told.push(form),
      });
    const tellEarly = (at: number) => {
      const last = made[at]?.heard.at(-1);
      if (last?.say === 'weigh')
        made[at]?.onmessage?.({ data: { say: 'early', ask: last.ask, looks: { nextLooks: [] } } });
    };
    ask('old');
    ask('new');
    tellEarly(0);
    tellEarly(1);
    answer(1, 'x');
    expect(told).toEqual(['looks of new', 'new']);
  });

  it('tells in words that a worker broke off, and opens a new one for the next case', () => {
    const { made, open } = someWorkers();
    const told: string[] = [];
    const desk = openWeigher(open, known, false);
    const ask = () =>
      desk.weigh(caseOf('a'), {
        progress: () => undefined,
        result: (result) => told.push(result.ok ? '' : (result.faults[0]?.message ?? '')),
      });
    ask();
    made[0]?.onerror?.({ message: 'out of memory' });
    expect(told[0]).toContain('nothing that was recorded is lost');
    ask();
    expect(made).toHaveLength(2);
  });
});
