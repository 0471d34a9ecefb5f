import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { houseKnowledge } from '../kits/houseKnowledge.ts';

test('every id of the thesaurus in knowledge is on the list that was checked, with the same term', async () => {
  const list: { terms: { id: number; term: string }[] } = JSON.parse(
    await readFile('test/reference/aat-terms.json', 'utf8'),
  );
  const checked = new Map(list.terms.map(({ id, term }) => [id, term]));
  const { forms, woods } = await houseKnowledge();
  const given = [...Object.values(forms), ...Object.values(woods)].flatMap(({ id, aat }) =>
    aat === undefined ? [] : [{ of: id, id: aat.id, term: aat.term }],
  );
  expect(given).toEqual(given.map((each) => ({ ...each, term: checked.get(each.id) })));
  expect(Object.values(forms).filter(({ aat }) => aat === undefined)).toEqual([]);
}, 60_000);
