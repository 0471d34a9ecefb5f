import { expect, test } from 'vitest';
import { soundKnowledge } from '../../test/architecture/soundKnowledge.ts';
import { compileKnowledge } from './compileKnowledge.ts';
import { groundsInWords } from './groundsInWords.ts';
import { pooledFigure } from './pooledFigure.ts';

const who = { who: 'Made up for a test.', weight: 1 };
const equal = { judges: { A: who, B: who }, house: 1, widened: 1 };

test('50, 30–70 and 80, 60–92 make 67, 31–90, as worked on paper', () => {
  // Log odds 0 ± 0.5151 and 1.3863 ± 0.6191; middle 0.6931, variance the mean of 0.2653 + 0.4805 and 0.3833 + 0.4805, 1.645 · 0.8971.
  const figure = pooledFigure({ in100: '50, 30–70' }, { A: '80, 60–92' }, equal);
  expect(figure.in100).toBe('67, 31–90');
  expect(figure.apart).toEqual(['50, 30–70', '80, 60–92']);
});

test('judges who agree leave the figure where it was, and as wide', () => {
  const same = '20, 10–36';
  expect(pooledFigure({ in100: same }, { A: same, B: same }, equal).in100).toBe(same);
});

test('judges who disagree leave a wider range than any of them gave', () => {
  const { in100 } = pooledFigure({ in100: '10, 8–12' }, { A: '40, 35–45' }, equal);
  // Log odds −2.197 ± 0.138 and −0.405 ± 0.127: middle −1.301, deviation 0.906.
  expect(in100).toBe('21, 5.8–55');
});

test('a judge weighs as much as the seeds have earned', () => {
  const weighed = (weight: number, house = 1) =>
    pooledFigure(
      { in100: '50, 30–70' },
      { A: '80, 60–92' },
      { ...equal, judges: { A: { ...who, weight } }, house },
    ).in100;
  expect(weighed(0)).toBe('50, 30–70');
  // 3 · 1.3863 / 4 = 1.0397 in log odds.
  expect(weighed(3).split(',')[0]).toBe('74');
  expect(weighed(1, 1 / 3).split(',')[0]).toBe('74');
});

test('ranges are widened before they are laid together', () => {
  // Twice 0.5151 about 0: 1.645 · 1.0302 = 1.6947.
  const figure = pooledFigure({ in100: '50, 30–70' }, { A: '50, 30–70' }, { ...equal, widened: 2 });
  expect(figure.in100).toBe('50, 16–84');
});

test('a judge whom nobody described, and a figure of never, leave the figure as it is', () => {
  expect(pooledFigure({ in100: '50, 30–70' }, { Z: '80, 60–92' }, equal)).toEqual({ in100: '50, 30–70' });
  expect(pooledFigure({ in100: '0, 0–1' }, { A: '5, 2–9' }, equal)).toEqual({ in100: '0, 0–1' });
});

test('compiled knowledge holds the pooled shares of signs and of what alterations change, and says what each judge said', () => {
  const { knowledge, faults } = compileKnowledge(soundKnowledge);
  expect(faults).toEqual([]);
  const square = knowledge?.signs['leg-square']?.shows['machine-copy'];
  expect(square?.in100).toBe('67, 31–90');
  expect(square === undefined ? '' : groundsInWords(square)).toBe('2 judged apart: 50, 80');
  const { happened, changes } = knowledge?.alterations['leg-pieced'] ?? {};
  expect(changes?.['front-leg']).toMatchObject({
    in100: '50, 30–70',
    to: 'repair',
    apart: ['50, 30–70', '50, 30–70'],
  });
  expect(happened?.later).toEqual({ in100: '5, 2–9' });
});

test('how often a thing is done keeps the figure of the file, and says what others said of it alone', () => {
  const { knowledge } = compileKnowledge(soundKnowledge);
  const period = knowledge?.alterations['leg-pieced']?.happened.period;
  expect(period?.in100).toBe('10, 5–20');
  expect(period === undefined ? '' : groundsInWords(period)).toBe(
    'asked for this alone, others said 20, 34: not taken in',
  );
  expect(knowledge?.forms.stool?.parts.map(({ renewed }) => renewed)).toEqual([
    { in100: '4, 2–8', aside: ['15, 8–26'] },
    { in100: '80, 60–95' },
  ]);
});

test('what a work prints itself is not moved by what others judge', () => {
  // The arcs of this test stand on page 3 of a book.
  const arcs = compileKnowledge(soundKnowledge).knowledge?.signs['saw-arcs'];
  expect(arcs?.shows['out-of-use']).toEqual({ in100: '1, 0.3–3' });
});

test('a sign marked aside keeps the figures of its file, and says what others said', () => {
  const marked = soundKnowledge.map((file) =>
    file.path === 'judged-apart/saw-marks.yaml'
      ? { ...file, text: file.text.replace('id: leg-square,', 'id: leg-square, aside: true,') }
      : file,
  );
  expect(compileKnowledge(marked).knowledge?.signs['leg-square']?.shows['machine-copy']).toEqual({
    in100: '50, 30–70',
    aside: ['80, 60–92'],
  });
});

test('habits and figures of making are pooled, the share of a shop and what is marked aside are only told', () => {
  const { knowledge, faults } = compileKnowledge([
    ...soundKnowledge,
    {
      path: 'judged-apart/shops.yaml',
      text: 'shops:\n  - { id: mill-lane, share: { A: "9, 4–16" }, habits: { leg-square: { B: "50, 30–70" } } }\n',
    },
    {
      path: 'judged-apart/making.yaml',
      text: `making:
  - { id: habitTogether, figures: { "": { A: "90, 80–95" } } }
  - { id: scrubbed, aside: true, figures: { "": { A: "9, 4–16" } } }
  - { id: sureness, figures: { hint/there: { A: "68, 58–78" } } }
`,
    },
  ]);
  expect(faults).toEqual([]);
  const shop = knowledge?.shops['mill-lane'];
  expect(shop?.share).toEqual({ in100: '2, 1–4', aside: ['9, 4–16'] });
  // Log odds 2.197 ± 0.799 and 0 ± 0.515: middle 1.099, deviation 1.289.
  expect(shop?.habits[0]?.shows).toMatchObject({ in100: '75, 27–96.1', apart: ['90, 70–97', '50, 30–70'] });
  expect(knowledge?.making.habitTogether).toMatchObject({
    in100: '90, 81–95.1',
    apart: ['90, 80–95', '90, 80–95'],
  });
  expect(knowledge?.making.scrubbed).toEqual({ in100: '3, 1–7', aside: ['9, 4–16'] });
  expect(knowledge?.making.sureness.hint?.there.apart).toHaveLength(2);
});

test('a judgment of a habit the shop has not, or of nothing in making.yaml, is a fault', () => {
  const faultsOf = (path: string, text: string) =>
    compileKnowledge([...soundKnowledge, { path, text }]).faults.map(({ code, entry }) => [code, entry]);
  expect(
    faultsOf(
      'judged-apart/shops.yaml',
      'shops:\n  - { id: mill-lane, habits: { saw-arcs: { B: "50, 30–70" } } }\n',
    ),
  ).toEqual([['knowledge.judged-fit', 'mill-lane']]);
  expect(
    faultsOf(
      'judged-apart/making.yaml',
      'making:\n  - { id: scrubbed, figures: { there: { A: "9, 4–16" } } }\n',
    ),
  ).toEqual([['knowledge.judged-fit', 'scrubbed']]);
});
