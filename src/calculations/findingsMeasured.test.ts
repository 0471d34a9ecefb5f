import { describe, expect, test } from 'vitest';
import { houseKnowledge } from '../../test/kits/houseKnowledge.ts';
import { evidenceWeigh } from './evidence.ts';
import { findingsMeasured } from './findingsMeasured.ts';
import { photoTwins } from './photoTwins.ts';
import { outputOf } from './testing/outputOf.ts';

const knowledge = await houseKnowledge();
const context = { knowledge, yearNow: 2026 };

/** Two legs of one line, the second by so much fuller: from tracing to a weighed finding, as from the terminal. */
function weighed(fullerMm: number) {
  const a = Array.from({ length: 40 }, (_, at): [number, number] => [30 + 20 * Math.sin(at / 6), 10 * at]);
  const b = a.map(([x, y], at): [number, number] => [x + fullerMm * Math.sin(at / 3), y]);
  const { rmsMm, noiseMm, sigmaMm } = outputOf(photoTwins, { a, b, closed: false });
  const measured = { from: 'photo.twins', rmsMm, noiseMm, sigmaMm };
  const { findings, places, basis } = outputOf(findingsMeasured, { measured, form: 'side-chair' }, context);
  const [{ sign = '', likelihoods = {} } = {}] = findings;
  const finding = { sign, state: 'present', likelihoods };
  const weighing = outputOf(
    evidenceWeigh,
    { form: 'side-chair', findings: [finding], draws: 0, quick: true },
    context,
  );
  const machine = weighing.readings.find(({ id }) => id === 'later-machine-copy')?.probability ?? 0;
  return { machine, places, basis, ignored: weighing.ignored };
}

describe('from a measurement to the readings', () => {
  test('legs as like as tracing leaves raise a machine’s copy, legs that differ by millimeters lower it', () => {
    const before = outputOf(
      evidenceWeigh,
      { form: 'side-chair', findings: [], draws: 0, quick: true },
      context,
    );
    const start = before.readings.find(({ id }) => id === 'later-machine-copy')?.probability ?? 0;
    const [alike, apart] = [weighed(0), weighed(5)];
    expect(alike.machine).toBeGreaterThan(start);
    expect(apart.machine).toBeLessThan(start);
    expect(alike.ignored).toEqual([]);
    expect(alike.places).toEqual([{ sign: 'twins-from-a-pattern', part: null }]);
    expect(alike.basis.by).toBe('judgement');
  });

  test('places are the parts of the form with these features', () => {
    const measured = { from: 'wear.contact', worn: 'in-places', auc: 0.9, aucSigma: 0.04 };
    const parts = (stretchers: string) =>
      outputOf(findingsMeasured, { measured, form: 'side-chair', features: { stretchers } }, context)
        .places.filter(({ sign }) => sign === 'front-stretcher-top-worn')
        .map(({ part }) => part);
    expect(parts('box')).toContain('front-stretcher');
    expect(parts('none')).toEqual([]);
  });
});

describe('bad input gives one plain sentence that says what to do', () => {
  const measured = { from: 'wood.roundness', likelihoodRatio: 3 };
  test.each<[object, string, string]>([
    [{ measured: { from: 'photo.guess' } }, 'measured.from', 'photo.twins'],
    [{ measured: { ...measured, likelihoodRatio: 0 } }, 'measured.likelihoodRatio', 'above 0'],
    [{ measured, form: 'throne' }, 'form', 'take one of'],
  ])('%o', (input, path, words) => {
    const result = findingsMeasured.answer(input, context);
    if (result.ok) throw new Error('no fault');
    expect(result.faults).toHaveLength(1);
    expect(result.faults[0]).toMatchObject({ path, message: expect.stringContaining(words) });
  });

  test('knowledge without its figures says which file to put back', () => {
    const bare = { ...context, knowledge: { ...knowledge, measurements: undefined } };
    const result = findingsMeasured.answer({ measured }, bare);
    expect(result).toMatchObject({ ok: false, faults: [{ code: 'findings.no-figures' }] });
  });
});
