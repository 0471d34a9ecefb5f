import { readdir, readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { houseKnowledge } from '../kits/houseKnowledge.ts';
import { webFaults } from './webFaults.ts';

const knowledge = await houseKnowledge();
const signs = new Set(Object.keys(knowledge?.signs ?? {}));

test('no screen names a sign or judges a figure: both are knowledge', async () => {
  const names = (await readdir('src/web', { recursive: true })).filter(
    (name) => /\.tsx?$/.test(name) && !/\.test\.tsx?$|(^|\/)testing\//.test(name),
  );
  expect(names.length).toBeGreaterThan(200);
  expect(signs.size).toBeGreaterThan(400);
  const faults = await Promise.all(
    names.map(async (name) => webFaults(`src/web/${name}`, await readFile(`src/web/${name}`, 'utf8'), signs)),
  );
  expect(faults.flat()).toEqual([]);
}, 60_000);

test.each([
  ['a sign in a list', "export const a = ['arm-ends-worn'];"],
  ['a sign as a key', "export const a = { 'saw-lines-pit': 3 };"],
  ['a sign in a template', 'export const a = `planer-ripple`;'],
  ['likelihoods', 'export const a = { likelihoods: { natural: 1, none: 0.2 } };'],
  ['odds', 'const twinsOdds = 10;'],
  ['an uncertainty', 'const cardSigma = { sigmaPx: 0.5 };'],
  ['what an uncertainty begins with', 'const [sigma, setSigma] = useState<number | undefined>(0.8);'],
  ['what an uncertainty falls back on', 'use(sigmaPx ?? 1.5);'],
  ['a store of the browser', "export const a = localStorage.getItem('b');"],
  ['an allowance', 'const lensAllowancePercent = 0.5;'],
  ['a figure owned to', '/** How much may be lost: a judgement. */\nconst most = 5;'],
])('reports %s', (_, source) => {
  expect(webFaults('src/web/a.tsx', source, signs)).toHaveLength(1);
});

test.each([
  ['a name of the screen', "export const a = { tool: 'toolmarks', kind: 'hand-planed' };"],
  ['what is worked out', 'const sigmaMm = 2 * Math.hypot(fit, 0.5 * scale);'],
  ['what the knowledge says', 'const sigma = knowledge.measurements?.scale.ruleMm.value;'],
  ['what is measured', 'export const a = { likelihoods: finding.likelihoods, sigma: { L: 0 } };'],
  ['the size of a drawing', 'const width = 640;'],
])('leaves %s alone', (_, source) => {
  expect(webFaults('src/web/a.tsx', source, signs)).toEqual([]);
});
