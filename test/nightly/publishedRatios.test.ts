import { expect, it } from 'vitest';
import { judgeCase } from '../../scripts/validate/judgeCase.ts';
import { readPublishedCases } from '../../scripts/validate/publishedCases.ts';
import { publishedRatiosFile } from '../../scripts/validate/publishedRatios.ts';
import { publishedRatios } from '../../src/calibration/publishedRatios.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';

it('says what the published cases are given now: if not, run npm run validate', async () => {
  const knowledge = await houseKnowledge();
  const set = 'test/reference/published-cases-second';
  const { cases, mapping } = await readPublishedCases(`${set}.json`, `${set}-mapping.json`);
  const judged = cases.flatMap((each) => {
    const mapped = mapping[each.id];
    return mapped === undefined || knowledge.forms[mapped.form] === undefined
      ? []
      : [judgeCase(each, mapped, knowledge, new Date().getFullYear(), 0)];
  });
  const numbers = (text: string) => text.match(/-?\d+(\.\d+)?(?=,)/g)?.map(Number);
  expect([...publishedRatios.period, ...publishedRatios.later]).toEqual(numbers(publishedRatiosFile(judged)));
}, 300_000);
