import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { bestDraw } from '../../src/evidence/figures.ts';
import { prepareCase } from '../../src/evidence/prepareCase.ts';
import { askedOf } from '../../src/knowledge/askedOf.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { type ReadingId, readingIds } from '../../src/piece/readings.ts';
import { posteriorFor } from '../../src/summation/evaluate.ts';
import { layOut } from '../../src/summation/makeLayout.ts';
import { fixModel } from '../../src/summation/model.ts';
import type { Posterior } from '../../src/summation/readingPosterior.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';

type Rule = {
  rule: number;
  says: string;
  ratio: number;
  for: keyof typeof sides;
  against: string;
  held: { sign: string; form: string }[];
};

const later: ReadingId[] = ['later-bench-copy', 'later-machine-copy', 'made-to-deceive'];
const sides = {
  intact: ['period-intact'],
  repaired: ['period-repaired'],
  altered: ['period-altered'],
  married: ['made-up'],
  faked: ['made-to-deceive'],
  period: ['period-intact', 'period-repaired', 'period-altered'],
  later,
  'later-or-married': [...later, 'made-up'],
} satisfies Record<string, ReadingId[]>;

const { rules } = JSON.parse(
  readFileSync(new URL('../reference/blind-judges-rules.json', import.meta.url), 'utf8'),
) as { rules: Rule[] };

let knowledge: Knowledge;
beforeAll(async () => {
  knowledge = await houseKnowledge();
}, 60_000);

/** How far one finding, by itself and plainly seen on the first part it can be on, moves one side against another. */
function ratio(form: string, sign: string, one: readonly ReadingId[], other: readonly ReadingId[]): number {
  const ofForm = knowledge.forms[form];
  const mark = knowledge.signs[sign];
  if (ofForm === undefined || mark === undefined) throw new Error(`no ${form} or ${sign}`);
  const part = mark.on.includes('whole')
    ? undefined
    : ofForm.parts.find((each) => askedOf(mark, each.kind, ofForm))?.id;
  const odds = (findings: { sign: string; part?: string; state: 'present' }[]) => {
    const ready = prepareCase({ form, mode: 'in-hand', findings }, knowledge, 2026);
    if (!ready.ok || ready.prepared.ignored.length > 0)
      throw new Error(`${sign} is not weighed on a ${form}`);
    const posterior: Posterior = posteriorFor(fixModel(layOut(ready.prepared), bestDraw()));
    const sum = (ids: readonly ReadingId[]) => ids.reduce((total, id) => total + posterior.readings[id], 0);
    return sum(one) / sum(other);
  };
  return odds([{ sign, ...(part === undefined ? {} : { part }), state: 'present' }]) / odds([]);
}

// Traces of a kind weigh within a factor of three of what two blind judges said of such traces; docs/knowledge.md names the rules
// that are not met and why.
describe('traces weigh about as two blind judges had it', () => {
  it.each(rules.flatMap((rule) => rule.held.map((held) => ({ ...rule, ...held }))))(
    'rule $rule, $says: $sign',
    ({ for: one, against, ratio: said, sign, form }) => {
      const side = sides[one];
      const other =
        against === 'rest'
          ? readingIds.filter((id) => !(side as readonly ReadingId[]).includes(id))
          : sides[against as keyof typeof sides];
      const found = ratio(form, sign, side, other);
      expect(found / said).toBeGreaterThan(1 / 3);
      expect(found / said).toBeLessThan(3);
    },
  );
});
