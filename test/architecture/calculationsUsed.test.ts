import { readdir, readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { byHand, calculations } from '../../src/calculations/registry.ts';

/** Reached by a screen through the pure function alone, with why. */
const byFunction: Readonly<Record<string, string>> = {
  'evidence.weigh': 'weighInSteps', // the screens weigh step by step, so that a newer touch can take the place of an older one
  'evidence.asks': 'photographsToAsk', // the letter takes the next looks that were weighed already
};

async function codeOf(folder: string): Promise<string> {
  const names = (await readdir(folder, { recursive: true })).filter(
    (name) => /\.tsx?$/.test(name) && !/\.test\.tsx?$|(^|\/)testing\//.test(name),
  );
  return (await Promise.all(names.map((name) => readFile(`${folder}/${name}`, 'utf8')))).join('\n');
}

/** Name of what holds each calculation, by id, and whether it stands among those by hand. */
async function held(): Promise<{ id: string; name: string; isByHand: boolean }[]> {
  const names = (await readdir('src/calculations', { recursive: true })).filter(
    (name) => name.endsWith('.ts') && !name.endsWith('.test.ts'),
  );
  const found = await Promise.all(
    names.map(async (file) => {
      const text = await readFile(`src/calculations/${file}`, 'utf8');
      const defined = text.matchAll(/export const (\w+) = defineCalculation\(\{\s*id: '([^']+)'/g);
      return [...defined].map(([, name = '', id = '']) => ({
        id,
        name,
        isByHand: file.startsWith('byHand/'),
      }));
    }),
  );
  return found.flat();
}

/** What is wrong with where a calculation stands; undefined where nothing is. */
function misplaced(code: string, each: { id: string; name: string; isByHand: boolean }): string | undefined {
  const isCalled = new RegExp(`\\b${byFunction[each.id] ?? each.name}\\b`).test(code);
  if (isCalled && each.isByHand) return `${each.id} is called: move it out of byHand/.`;
  if (!isCalled && !each.isByHand)
    return `${each.id} is called by no screen: give it one, or a place in byHand/.`;
  return undefined;
}

test('every calculation is called by a screen or the opinion, or stands among those by hand', async () => {
  const code = (await Promise.all(['src/web', 'src/opinion'].map(codeOf))).join('\n');
  const all = await held();
  expect(all.map(({ id }) => id).sort()).toEqual(calculations.map(({ id }) => id));
  expect(
    all
      .filter(({ isByHand }) => isByHand)
      .map(({ id }) => id)
      .sort(),
  ).toEqual(byHand.map(({ id }) => id).sort());
  expect(all.flatMap((each) => misplaced(code, each) ?? [])).toEqual([]);
});

test('reports one that nobody calls, and one by hand that somebody does', () => {
  const code = 'runHere(setsSize, input)';
  expect(misplaced(code, { id: 'a.b', name: 'lonely', isByHand: false })).toContain('no screen');
  expect(misplaced(code, { id: 'sets.size', name: 'setsSize', isByHand: true })).toContain('move it out');
  expect(misplaced(code, { id: 'sets.size', name: 'setsSize', isByHand: false })).toBeUndefined();
});
